import { EARLY_SECONDS } from '../../dsp/rolloff/early-part';
import {
  BAND_COUNT,
  marginsDb,
  rolloffBandHz,
  type RolloffBands,
} from '../../dsp/rolloff/rolloff-bands';
import type { BassBands } from './reading';

/** Bands as plain numbers of six digits, small enough to lie in a session. */
export function keepBass({ power, noisePower, lines, early }: RolloffBands): BassBands {
  return {
    power: rounded(power),
    noisePower: rounded(noisePower),
    lines: rounded(lines),
    early: early.map((part) => ({
      seconds: part.seconds,
      power: rounded(part.power),
      noisePower: rounded(part.noisePower),
    })),
  };
}

/**
 * The bands that were kept, as they were read. Early parts through other windows than those of
 * today are left away.
 */
export function bassBands(kept: BassBands): RolloffBands {
  const power = Float64Array.from(kept.power);
  const noisePower = Float64Array.from(kept.noisePower);
  const alike =
    kept.early.length === EARLY_SECONDS.length &&
    kept.early.every(({ seconds }, index) => seconds === EARLY_SECONDS[index]);
  return {
    hz: Float64Array.from({ length: BAND_COUNT }, (_, k) => rolloffBandHz(k)),
    power,
    noisePower,
    lines: Float64Array.from(kept.lines),
    marginDb: marginsDb(power, noisePower),
    early: (alike ? kept.early : []).map((part) => ({
      seconds: part.seconds,
      power: Float64Array.from(part.power),
      noisePower: Float64Array.from(part.noisePower),
    })),
  };
}

function rounded(values: Float64Array): number[] {
  const result: number[] = [];
  for (let k = 0; k < values.length; k++) result.push(Number((values[k] ?? 0).toPrecision(6)));
  return result;
}
