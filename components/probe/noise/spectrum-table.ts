import { msg } from '@lit/localize';
import type { NoiseSpectrum } from '../../../src/noise/noise-state';
import { isNumber, numberText } from '../../../src/locale/number-text';

const heads = {
  get level() {
    return msg('level');
  },
  get noise() {
    return msg('noise floor');
  },
  get coherence() {
    return msg('coherence');
  },
} as const;

/** The table behind the live spectrum: a row for a band. */
export function spectrumTable({ hz, db, noiseDb, coherence, unit }: NoiseSpectrum): {
  readonly head: string[];
  readonly rows: string[][];
} {
  const coherent = coherence.some(isNumber);
  return {
    head: [
      msg('Band, Hz'),
      `${heads.level}, ${unit}`,
      `${heads.noise}, ${unit}`,
      ...(coherent ? [heads.coherence] : []),
    ],
    rows: hz.map((one, i) => [
      numberText(one, one < 100 ? 1 : 0),
      numberText(db[i], 1),
      numberText(noiseDb[i], 1),
      ...(coherent ? [numberText(coherence[i], 2)] : []),
    ]),
  };
}

/** All bands as tab-separated text with plain signs. */
export function spectrumCopy({ hz, db, noiseDb, coherence, unit }: NoiseSpectrum): string {
  const cell = (value: number | null | undefined): string =>
    isNumber(value) ? String(Number(value.toFixed(3))) : '';
  const head = ['Hz', `${heads.level} ${unit}`, `${heads.noise} ${unit}`, heads.coherence];
  const lines = hz.map((one, i) => [one, db[i], noiseDb[i], coherence[i]].map(cell).join('\t'));
  return `${head.join('\t')}\n${lines.join('\n')}\n`;
}
