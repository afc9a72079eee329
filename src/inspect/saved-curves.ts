import { msg, str } from '@lit/localize';
import type { DbCurve } from '../../dsp/response/curve';
import { delaySeconds, type ImpulseResponse } from '../../dsp/response/impulse-response';
import type { SavedCurve } from './curves-to-csv';

/** Levels are known to about this. */
const levelDecimals = 2;
/** Those of a 32-bit float. */
const sampleDigits = 7;

/** A level over frequency as a curve to be saved; `re` is what its 0 dB is, such as "500–2000 Hz". */
export function savedLevel(name: string, { hz, db }: DbCurve, re: string | null): SavedCurve {
  return {
    name,
    unit: re === null ? 'dB' : msg(str`dB re ${re}`),
    axis: { name: 'frequency', unit: 'Hz', values: hz },
    values: db,
    digits: { decimals: levelDecimals },
  };
}

/** An impulse response as a curve to be saved, over seconds after zero delay. */
export function savedImpulse(name: string, ir: ImpulseResponse): SavedCurve {
  const values = Float64Array.from(ir.samples, (_, n) => delaySeconds(ir, n));
  return {
    name,
    unit: msg('re full scale'),
    axis: { name: 'time', unit: 's', values },
    values: ir.samples,
    digits: { significant: sampleDigits },
  };
}
