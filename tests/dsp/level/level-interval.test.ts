import { describe, expect, it } from 'vitest';
import { bandPower } from '../../../dsp/level/band-level';
import { powerToDb } from '../../../dsp/level/decibels';
import { levelInterval } from '../../../dsp/level/level-interval';
import { powerSpectrum, type PowerSpectrum } from '../../../dsp/response/power-spectrum';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';

const sampleRate = 1000;
const length = 1530;
const seconds = length / sampleRate;

function spectrumOf(samples: Float64Array): PowerSpectrum {
  return powerSpectrum({ samples, sampleRate, zeroIndex: 0 }, 0.3);
}

/** A decaying mode at 50 Hz and a weaker one, as of a sub in a room. */
const modes = Float64Array.from({ length }, (_, n) => {
  const at = n / sampleRate;
  const first = Math.sin(2 * Math.PI * 50 * at) * Math.exp(-at / 0.15);
  return first + 0.5 * Math.sin(2 * Math.PI * 67 * at) * Math.exp(-at / 0.1);
});
/** A click with noise that dies away: every frequency alike. */
const click = (() => {
  const normal = gaussian(seededRandom(5));
  return Float64Array.from({ length }, (_, n) =>
    n === 100 ? 1 : n > 100 ? 0.06 * normal() * Math.exp(-(n - 100) / 100) : 0,
  );
})();

/** White noise of one rms, in another place of which the silence stands, repeated to the length. */
function heardIn(
  samples: Float64Array,
  rms: number,
  seed: number,
  silence = length,
): { heard: PowerSpectrum; hiss: PowerSpectrum } {
  const normal = gaussian(seededRandom(seed));
  const heard = samples.map((value) => value + rms * normal());
  const quiet = Float64Array.from({ length: silence }, () => rms * normal());
  const hiss = Float64Array.from({ length }, (_, n) => quiet[n % silence] ?? 0);
  return { heard: spectrumOf(heard), hiss: spectrumOf(hiss) };
}

/** Share of so many takes whose interval holds the true level, and the shares it lies beside. */
function coverage(
  samples: Float64Array,
  band: readonly [number, number],
  overNoiseDb: number,
  silence = length,
): { held: number; under: number; over: number } {
  const power = bandPower(spectrumOf(samples), ...band);
  const truth = powerToDb(power);
  const rms = Math.sqrt(power / 10 ** (overNoiseDb / 10) / length);
  const takes = 1500;
  let [under, over] = [0, 0];
  for (let take = 0; take < takes; take++) {
    const { heard, hiss } = heardIn(samples, rms, 1000 + take, silence);
    const interval = levelInterval(heard, hiss, band, {
      responseSeconds: seconds,
      hissSeconds: seconds,
      silenceSeconds: silence / sampleRate,
    });
    if (!interval || interval[0] > truth) under++;
    else if (interval[1] < truth) over++;
  }
  return { held: 1 - (under + over) / takes, under: under / takes, over: over / takes };
}

describe('levelInterval', () => {
  it.each([
    ['of a flat response far over the noise', click, [60, 400], 40, length],
    ['of a flat response at the noise', click, [60, 400], 1, length],
    ['of two modes far over the noise', modes, [30, 80], 30, length],
    ['of two modes near the noise', modes, [30, 80], 6, length],
    ['with a third of the silence, repeated', click, [60, 400], 3, 510],
    ['of modes with a third of the silence, repeated', modes, [30, 80], 15, 510],
  ] as const)('holds the level nine times in ten %s', (_, samples, band, db, silence) => {
    const { held, under, over } = coverage(samples, band, db, silence);
    expect(held).toBeGreaterThan(0.87);
    expect(held).toBeLessThan(0.93);
    expect(under).toBeGreaterThan(0.02);
    expect(over).toBeGreaterThan(0.02);
  });

  it('is what the closed form says of a flat power: √(2/SNR) over the lines of the band', () => {
    const hzPerBin = 0.1;
    const flat = (power: number): PowerSpectrum => ({
      hzPerBin,
      power: new Float64Array(5001).fill(power),
    });
    const lengths = { responseSeconds: 2, hissSeconds: 2, silenceSeconds: 2 };
    // Shares of a narrow band are nearly alike: 20 Hz hold 40 lines of half a hertz.
    const [low, high] = levelInterval(flat(1 + 1e-4), flat(1e-4), [400, 420], lengths) ?? [];
    const expected = (10 / Math.LN10) * 1.645 * Math.sqrt(2e-4 / 40);
    // The quantile of 80 degrees of freedom is 1 % wider.
    expectClose(high, 1.0115 * expected, 0.01 * expected);
    expectClose(low, -1.0115 * expected, 0.01 * expected);
  });

  it('never narrows in more noise, or with less silence', () => {
    const steps = [-60, -45, -30, -20, -12, -6, -3];
    const cases: readonly [Float64Array, readonly [number, number]][] = [
      [click, [60, 400]],
      [modes, [30, 80]],
    ];
    for (const [samples, band] of cases) {
      const power = bandPower(spectrumOf(samples), ...band);
      for (let seed = 0; seed < 40; seed++) {
        const width = (db: number, silenceSeconds: number): number => {
          const rms = Math.sqrt((power * 10 ** (db / 10)) / length);
          const { heard, hiss } = heardIn(samples, rms, seed);
          const lengths = { responseSeconds: seconds, hissSeconds: seconds, silenceSeconds };
          const [low, high] = levelInterval(heard, hiss, band, lengths) ?? [0, Infinity];
          return high - low;
        };
        const widths = steps.map((db) => width(db, seconds));
        for (const [step, wide] of widths.slice(1).entries()) {
          expect(wide).toBeGreaterThanOrEqual(widths[step] ?? Number.NaN);
        }
        expect(width(-6, 0.5)).toBeGreaterThanOrEqual(width(-6, 1.53));
      }
    }
  });

  it('counts the noise for as long as the response lasts', () => {
    const { heard, hiss } = heardIn(click, 0.01, 3);
    const twice = { ...hiss, power: hiss.power.map((power) => 2 * power) };
    const lengths = { responseSeconds: seconds, hissSeconds: seconds, silenceSeconds: seconds };
    const longer = { ...lengths, hissSeconds: 2 * seconds, silenceSeconds: 2 * seconds };
    const alike = levelInterval(heard, hiss, [60, 400], lengths) ?? [];
    const longHiss = levelInterval(heard, twice, [60, 400], longer) ?? [];
    expectClose(longHiss, alike, 0.02, 'only its own uncertainty is less');
  });

  it('is the level itself without noise, and nothing where nothing is left', () => {
    const lengths = { responseSeconds: seconds, hissSeconds: seconds, silenceSeconds: seconds };
    const quiet = spectrumOf(new Float64Array(length));
    const own = powerToDb(bandPower(spectrumOf(click), 60, 400));
    expectClose(levelInterval(spectrumOf(click), quiet, [60, 400], lengths), [own, own], 1e-9);
    expect(levelInterval(quiet, spectrumOf(click), [60, 400], lengths)).toBeNull();
  });

  it('refuses lengths that are none', () => {
    const spectrum = spectrumOf(click);
    const lengths = { responseSeconds: 0, hissSeconds: 1, silenceSeconds: 1 };
    expect(() => levelInterval(spectrum, spectrum, [60, 400], lengths)).toThrow(
      'lengths must be positive, got 0, 1 and 1',
    );
  });
});
