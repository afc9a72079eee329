import { describe, expect, it } from 'vitest';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const sampleRate = 48000;
const zeroIndex = 8160;
const arrivalSeconds = 0.012;

/** A sub: bass that begins at its arrival, ripple before it that is cut off at the start. */
function cutSub(rippleDb: number): Float64Array {
  const normal = gaussian(seededRandom(4));
  const ripple = 10 ** (rippleDb / 20);
  return Float64Array.from({ length: 65_000 }, (_, n) => {
    const t = (n - zeroIndex) / sampleRate - arrivalSeconds;
    const early = ripple * Math.cos(2 * Math.PI * 11 * t);
    const rise = Math.max(0, t / 0.008);
    const bass = rise * Math.exp(1 - rise) * Math.sin(2 * Math.PI * 55 * Math.max(0, t));
    return bass + early + 1e-6 * normal();
  });
}

describe('findArrival in a response whose bass is cut off at its start', () => {
  it.each([-20, -30, -40])('is not drawn to the cut, the ripple there being %i dB', (rippleDb) => {
    const arrival = findArrival({ samples: cutSub(rippleDb), sampleRate, zeroIndex });
    expect(arrival?.bandAdapted).toBe(true);
    expectClose(arrival?.seconds, arrivalSeconds, 0.006, 'a sub is timed to some milliseconds');
  });
});
