import { trimmedText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';

/** A band of noise that the trade uses. */
export interface NoiseBand {
  readonly id: 'full' | 'mains' | 'sub';
  readonly name: string;
  readonly lowHz: number;
  readonly highHz: number;
}

/**
 * All that a sweep covers, so that the response and its roll-off agree with a take's; the band mains
 * are levelled in; the band of subs. Common practice, no source.
 */
export const noiseBands: readonly NoiseBand[] = [
  {
    id: 'full',
    get name() {
      return msg('Full');
    },
    lowHz: 10,
    highHz: 20_000,
  },
  {
    id: 'mains',
    get name() {
      return msg('Mains');
    },
    lowHz: 500,
    highHz: 2000,
  },
  {
    id: 'sub',
    get name() {
      return msg('Sub');
    },
    lowHz: 30,
    highHz: 80,
  },
];

/** Limits a band may have, Hz. */
export const noiseLimits = { lowHz: 10, highHz: 22_000 } as const;
/** The least ratio of the two limits: a third of an octave. */
const leastRatio = 2 ** (1 / 3);

/**
 * Null when noise can be made from lowHz to highHz, else what is wrong with the limits. `topHz` is
 * what the line can carry at most, default 22 kHz.
 */
export function checkNoiseBand(
  lowHz: number,
  highHz: number,
  topHz: number = noiseLimits.highHz,
): Trouble | null {
  const said = msg(str`from ${sayHz(lowHz)} to ${sayHz(highHz)}`);
  if (!(Number.isFinite(lowHz) && Number.isFinite(highHz))) {
    return trouble('bad-number', msg(str`The noise needs two limits in Hz, not ${said}.`));
  }
  if (lowHz >= highHz) {
    return trouble(
      'bad-number',
      msg(str`The noise cannot run ${said}: the lower limit must lie below the upper one.`),
    );
  }
  const top = Math.min(topHz, noiseLimits.highHz);
  if (lowHz < noiseLimits.lowHz || highHz > top) {
    return trouble(
      'bad-number',
      msg(
        str`The noise cannot run ${said}: its limits must lie between ${sayHz(noiseLimits.lowHz)} and ${sayHz(top)}.`,
      ),
    );
  }
  if (highHz < lowHz * leastRatio * (1 - 1e-9)) {
    return trouble(
      'bad-number',
      msg(
        str`The noise cannot run ${said}: its band must be at least a third of an octave wide, up to ${sayHz(Math.ceil(lowHz * leastRatio))} or more.`,
      ),
    );
  }
  return null;
}

function sayHz(hz: number): string {
  return withUnit(Number.isFinite(hz) ? trimmedText(hz, 1) : String(hz), 'Hz');
}
