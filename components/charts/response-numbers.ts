import { msg } from '@lit/localize';
import { curveAt } from './curve-path';
import { dbText, hzText, intervalText, isNumber, numberText } from '../../src/locale/number-text';
import type { ResponseTrace } from './response-trace';

/** What the cursor reads at one frequency. */
export interface ResponseReadout {
  readonly hz: number;
  readonly values: readonly { readonly name: string; readonly text: string }[];
}

/** Frequencies the cursor steps through: the points of the examined curve inside the range. */
export function cursorSteps(traces: readonly ResponseTrace[], low: number, high: number): number[] {
  const hz: readonly (number | null)[] = traces[0]?.curves.response.hz ?? [];
  return hz.filter(isNumber).filter((f) => f >= low && f <= high);
}

/** Every curve's value at a frequency, as text with units. */
export function readResponse(traces: readonly ResponseTrace[], hz: number): ResponseReadout {
  const [lead, ...others] = traces;
  const values: { name: string; text: string }[] = [];
  if (lead) {
    const { response, fit } = lead.curves;
    values.push({ name: lead.channel, text: dbText(curveAt(response.hz, response.db, hz)) });
    if (fit) {
      const low = curveAt(fit.hz, fit.low, hz);
      const high = curveAt(fit.hz, fit.high, hz);
      const middle = curveAt(fit.hz, fit.db, hz);
      if (isNumber(middle)) {
        const band = isNumber(low) && isNumber(high) ? ` (${intervalText([low, high], 1)})` : '';
        values.push({ name: 'fit', text: `${dbText(middle)}${band}` });
      }
    }
    const noise = curveAt(response.hz, response.noiseDb, hz);
    if (isNumber(noise)) values.push({ name: 'noise', text: dbText(noise) });
  }
  for (const { channel, curves } of others) {
    const value = curveAt(curves.response.hz, curves.response.db, hz);
    values.push({ name: channel, text: dbText(value) });
  }
  return { hz, values };
}

/** The read-out as one sentence, for a screen reader. */
export function readoutSentence({ hz, values }: ResponseReadout): string {
  return `${hzText(hz)}: ${values.map(({ name, text }) => `${name} ${text}`).join(', ')}`;
}

const pointsPerRow = 8;

/** Column heads and third-octave rows of the table behind the chart. */
export function responseTable(traces: readonly ResponseTrace[]): {
  head: string[];
  rows: string[][];
} {
  const [lead, ...others] = traces;
  if (!lead) return { head: [], rows: [] };
  const { response, fit } = lead.curves;
  const steps = cursorSteps(traces, 0, Infinity);
  return {
    head: [
      'Hz',
      `${lead.channel}, dB`,
      msg('fit, dB'),
      msg('fit 90\u202f%, dB'),
      msg('noise, dB'),
      ...others.map(({ channel }) => `${channel}, dB`),
    ],
    rows: steps
      .filter((_, i) => i % pointsPerRow === 0)
      .map((hz) => [
        numberText(hz, hz < 100 ? 1 : 0),
        numberText(curveAt(response.hz, response.db, hz), 1),
        numberText(fit && curveAt(fit.hz, fit.db, hz), 1),
        intervalText(fit && pair(curveAt(fit.hz, fit.low, hz), curveAt(fit.hz, fit.high, hz)), 1),
        numberText(curveAt(response.hz, response.noiseDb, hz), 1),
        ...others.map(({ curves }) =>
          numberText(curveAt(curves.response.hz, curves.response.db, hz), 1),
        ),
      ]),
  };
}

function pair(low: number | null, high: number | null): readonly [number, number] | null {
  return isNumber(low) && isNumber(high) ? [low, high] : null;
}

/** All points as tab-separated text with plain signs, for a spreadsheet. */
export function responseCopy(traces: readonly ResponseTrace[]): string {
  const [lead, ...others] = traces;
  if (!lead) return '';
  const { response, fit } = lead.curves;
  const cell = (value: number | null | undefined) =>
    isNumber(value) ? String(Number(value.toFixed(2))) : '';
  const head = [
    'Hz',
    `${lead.channel} dB`,
    msg('fit dB'),
    msg('fit low dB'),
    msg('fit high dB'),
    msg('noise dB'),
  ];
  const lines = cursorSteps(traces, 0, Infinity).map((hz) =>
    [
      cell(hz),
      cell(curveAt(response.hz, response.db, hz)),
      cell(fit && curveAt(fit.hz, fit.db, hz)),
      cell(fit && curveAt(fit.hz, fit.low, hz)),
      cell(fit && curveAt(fit.hz, fit.high, hz)),
      cell(curveAt(response.hz, response.noiseDb, hz)),
      ...others.map(({ curves }) => cell(curveAt(curves.response.hz, curves.response.db, hz))),
    ].join('\t'),
  );
  const names = [...head, ...others.map(({ channel }) => `${channel} dB`)].join('\t');
  return `${names}\n${lines.join('\n')}\n`;
}
