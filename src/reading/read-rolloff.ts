import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { fitRolloff } from '../../dsp/rolloff/fit-rolloff';
import { rolloffBands, type RolloffBands } from '../../dsp/rolloff/rolloff-bands';
import type { CloseTo } from './close-to';
import { marginBetween, tellRolloff, type RolloffFinding } from './rolloff-finding';
import { divisibleHz, takeOutOfBands, type FilterInForce } from './take-out-filter';
import { judgeThrough } from './take-out-rolloff';

/** A sub's own low-pass stays out of its roll-off: bands up to here are used. */
export const subUpperHz = 90;
/** The fit needs bands up to here. */
const fewestUpperHz = 60;
/**
 * Roll-off of one speaker from its impulse response at a seat and the noise that went through the
 * same deconvolution (null when unknown). A crossover in force is divided out, and the roll-off
 * withheld where that cannot be done. `sheetF3Hz`: f3 on the speaker's sheet, 5 to 500. Sources: see dsp/rolloff/fit-rolloff.
 */
export function readRolloff(
  ir: ImpulseResponse,
  noise: ImpulseResponse | null,
  isSub: boolean,
  filter: FilterInForce | null = null,
  sheetF3Hz: number | null = null,
): RolloffFinding {
  return readRolloffOf(rolloffBands(ir, noise), isSub, filter, sheetF3Hz);
}

/**
 * The same from the bass of a response in bands, any crossover in force still in it; `close` where
 * the microphone was held to the speaker.
 */
export function readRolloffOf(
  raw: RolloffBands,
  isSub: boolean,
  filter: FilterInForce | null = null,
  sheetF3Hz: number | null = null,
  close: Pick<CloseTo, 'coneOnly'> | null = null,
): RolloffFinding {
  const bassMarginDb = marginBetween(raw.hz, raw.marginDb, 40, 80);
  const range = filter ? divisibleHz(filter) : ([0, Infinity] as const);
  const bands = filter ? takeOutOfBands(raw, filter.spec, range) : raw;
  const fit = fitRolloff(bands, {
    ...(close ? { place: 'close', coneOnly: close.coneOnly } : { place: 'room' }),
    ...(sheetF3Hz === null ? {} : { sheetF3Hz }),
    lowerHz: isSub ? 0 : range[0],
    ...(isSub ? { upperHz: Math.max(Math.min(subUpperHz, range[1]), fewestUpperHz) } : {}),
  });
  const through = filter && !isSub ? judgeThrough(filter, bands, fit) : null;
  if (through?.withheld) {
    return { rolloff: null, curve: null, bassMarginDb, notes: [through.note] };
  }
  const told = tellRolloff(fit, isSub, bassMarginDb);
  return through && told.rolloff ? { ...told, notes: [through.note, ...told.notes] } : told;
}
