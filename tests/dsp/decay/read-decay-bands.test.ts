import { describe, expect, it } from 'vitest';
import { rangeLimits, type DecayRange, type DecayTime } from '../../../dsp/decay/decay-time';
import { octaveWidthHz } from '../../../dsp/decay/octave-filter';
import { readDecayBands } from '../../../dsp/decay/read-decay-bands';
import { expectClose } from '../../close';
import { decayingNoise, noiseAlone, sampleRate } from './decaying-noise';

const seeds = Array.from({ length: 16 }, (_, n) => n + 1);

const ranges = { edt: 'EDT', t20: 'T20', t30: 'T30' } as const;

/** Readings of decaying noise, one a seed. */
function readings(
  seconds: number,
  noiseDb: number,
  bandsHz?: readonly [number, number],
  some = seeds,
) {
  return some.map((seed) => {
    const ir = decayingNoise({ falls: [{ seconds, power: 1 }], noiseDb, seed });
    return readDecayBands(ir, {
      noise: noiseAlone(noiseDb, seed),
      arrivalSeconds: 0,
      ...(bandsHz && { bandsHz }),
    });
  });
}

function meanLog(times: readonly DecayTime[], truth: number): number {
  const logs = times.map(({ seconds }) => Math.log((seconds ?? 1e9) / truth));
  return logs.reduce((sum, one) => sum + one, 0) / logs.length;
}

/** Share of intervals that hold the truth, without what they allow for rooms that are not diffuse. */
function coverage(times: readonly DecayTime[], truth: number, range: DecayRange): number {
  const held = times.filter(({ seconds, interval }) => {
    const half = Math.log((interval?.[1] ?? 0) / (seconds ?? 1)) / 1.645;
    const own = Math.sqrt(half ** 2 - rangeLimits[range].scatter ** 2);
    return Math.abs(Math.log((seconds ?? 0) / truth)) < 1.645 * own;
  });
  return held.length / times.length;
}

describe('decay times of a single exponential in noise', () => {
  it.each([
    [0.3, -60],
    [0.3, -48],
    [0.8, -60],
    [0.8, -48],
  ])('are those it was made with, %d s with noise at %d dB', (seconds, noiseDb) => {
    const all = readings(seconds, noiseDb);
    for (const key of ['edt', 't20', 't30'] as const) {
      const told = all.flatMap(({ bands }) => bands.map((band) => band[key]));
      const some = told.filter((time) => time.seconds !== null);
      // In the lowest bands the noise is known from few independent samples.
      expect(some.length / told.length).toBeGreaterThan(0.85);
      expectClose(meanLog(some, seconds), 0, 0.03, 'a mean of 150 that scatter by 5 to 40 %');
      expect(coverage(some, seconds, ranges[key])).toBeGreaterThan(0.84);
      expect(coverage(some, seconds, ranges[key])).toBeLessThan(0.97);
      // Nothing speaks against a straight decay but chance.
      expect(some.filter(({ trusted }) => trusted).length / some.length).toBeGreaterThan(0.85);
    }
  });

  it('are hardly moved by the filter where B·T is 8', () => {
    // 63 Hz: B = 44.5 Hz.
    const times = readings(0.18, -60, [60, 66]).flatMap(({ bands }) => bands.map(({ t20 }) => t20));
    const some = times.filter(({ seconds }) => seconds !== null);
    expect(some.length).toBeGreaterThan(13);
    expectClose(meanLog(some, 0.18), 0, 0.1, 'a mean of 16 that scatter by 30 %');
  });

  it('bend by chance as the covariance of their levels says', () => {
    // 250 Hz: B = 177 Hz; levels move together over the 1.257 B that ∫|H|² and ∫|H|⁴ give.
    const bands = readings(0.5, -70, [240, 260]).flatMap((reading) => reading.bands);
    const mean = (of: 't20' | 't30'): number =>
      bands.reduce((sum, band) => sum + (band[of].nonLinearity ?? 0), 0) / bands.length;
    const products = 1.257 * octaveWidthHz(251.19) * 0.5;
    // 260.4 and 145.4 times k/2B = 6.908/BT: residual variance over variance of a line plus an
    // Ornstein-Uhlenbeck process, over 4.605 and 6.908 of its times.
    expectClose(
      [mean('t20') * products, mean('t30') * products],
      [1799, 1004],
      600,
      'a mean of 16',
    );
  });

  it('need no noise heard by itself', () => {
    const ir = decayingNoise({ falls: [{ seconds: 0.4, power: 1 }], noiseDb: -55, seed: 5 });
    const { bands } = readDecayBands(ir, {
      noise: null,
      arrivalSeconds: 0,
      bandsHz: [900, 17_000],
    });
    const alone = readDecayBands(ir, {
      noise: noiseAlone(-55, 5),
      arrivalSeconds: 0,
      bandsHz: [900, 17_000],
    });
    bands.forEach(({ t30 }, n) => {
      expectClose(t30.seconds, alone.bands[n]?.t30.seconds, 1e-3);
    });
  });

  it('mean the octaves of 500 Hz and 1 kHz', () => {
    const { bands, mid } =
      readings(0.4, -60, undefined, [1])[0] ?? readDecayBands(noiseAlone(0, 1), { noise: null });
    const t20 = (name: string): number => bands.find((one) => one.name === name)?.t20.seconds ?? 0;
    expectClose(mid.t20.seconds, (t20('500 Hz') + t20('1 kHz')) / 2, 1e-12);
    expect(bands.map(({ name }) => name)).toEqual([
      ...['31.5 Hz', '63 Hz', '125 Hz', '250 Hz', '500 Hz'],
      ...['1 kHz', '2 kHz', '4 kHz', '8 kHz', '16 kHz'],
    ]);
  });
});

describe('decay times are refused', () => {
  const told = (noiseDb: number, range: 'edt' | 't20' | 't30'): number => {
    const times = readings(0.5, noiseDb, [900, 1100], seeds.slice(0, 8)).flatMap(
      ({ bands }) => bands,
    );
    return times.filter((band) => band[range].seconds !== null).length / times.length;
  };

  it.each([
    ['edt', 20],
    ['t20', 35],
    ['t30', 45],
  ] as const)(
    'when the noise lies less than 10 dB under the range of %s: %d dB',
    (range, needed) => {
      expect(told(-(needed + 3), range)).toBeGreaterThan(0.9);
      expect(told(-(needed - 3), range)).toBeLessThan(0.1);
    },
  );

  it('with what is missing and the one thing that would settle it', () => {
    const at = (noiseDb: number): string | null | undefined => {
      const ir = decayingNoise({ falls: [{ seconds: 0.5, power: 1 }], noiseDb, seed: 2 });
      const { bands } = readDecayBands(ir, {
        noise: noiseAlone(noiseDb, 2),
        bandsHz: [3900, 4100],
      });
      return bands[0]?.t30.sentence;
    };
    expect(at(-43.5)).toMatch(
      /^No T30 at 4 kHz: the decay starts 4\d dB above the noise, and 45 are needed\. A sweep (twice|four times) as long would settle it\.$/,
    );
    expect(at(-30)).toMatch(/1[4-7] dB more level would settle it\.$/);
    expect(at(-60)).toBeNull();
  });

  it('when the record ends first', () => {
    const falls = [{ seconds: 3.5, power: 1 }];
    const ir = decayingNoise({ falls, noiseDb: -90, seed: 2 });
    const { t20, t30 } =
      readDecayBands(ir, { noise: noiseAlone(-90, 2), arrivalSeconds: 0, bandsHz: [900, 1100] })
        .bands[0] ?? {};
    expect(t20?.seconds).toBeNull();
    expect(t30?.sentence).toContain('A longer pause after the sweep would settle it.');
  });

  it('when they are too short for the octave filter', () => {
    const ir = decayingNoise({ falls: [{ seconds: 0.07, power: 1 }], noiseDb: -70, seed: 2 });
    const { bands } = readDecayBands(ir, {
      noise: noiseAlone(-70, 2),
      arrivalSeconds: 0,
      bandsHz: [31, 130],
    });
    expect(bands.map(({ t20 }) => t20.seconds)).toEqual([null, null, expect.any(Number)]);
    expect(bands[0]?.t20.sentence).toContain('octave filter’s own decay');
  });

  it('when the direct sound is nearly all there is', () => {
    // 40 dB more energy than the room's, which is k⁻¹ of the rate: 0.4 s/13.8.
    const direct = 1e4 * sampleRate * (0.4 / (6 * Math.LN10));
    const ir = decayingNoise({
      falls: [{ seconds: 0.4, power: 1 }],
      noiseDb: -60,
      seed: 2,
      direct,
    });
    const { edt, t20 } =
      readDecayBands(ir, { noise: noiseAlone(-60, 2), arrivalSeconds: 0, bandsHz: [900, 1100] })
        .bands[0] ?? {};
    expect([edt?.seconds, t20?.seconds]).toEqual([null, null]);
    expect(edt?.sentence).toContain('A seat farther from the speaker would settle it.');
  });

  it('in noise alone and in silence, with a sentence each', () => {
    const silent = { samples: new Float64Array(60_000), sampleRate, zeroIndex: 8000 };
    for (const ir of [noiseAlone(0, 3), silent]) {
      const { bands, mid } = readDecayBands(ir, { noise: null, arrivalSeconds: 0 });
      for (const { edt, t20, t30, curvature, rangeDb } of [
        ...bands,
        { ...mid, curvature: null, rangeDb: 0 },
      ]) {
        for (const time of [edt, t20, t30]) {
          expect(time.seconds).toBeNull();
          expect(time.interval).toBeNull();
          expect(time.sentence).toMatch(/would settle it\.$/);
        }
        expect(curvature).toBeNull();
        expect(Number.isNaN(rangeDb)).toBe(false);
      }
    }
  });

  it('when the response is shorter than the filter builds up', () => {
    const ir = decayingNoise({ falls: [{ seconds: 0.1, power: 1 }], seed: 2, afterSeconds: 0.2 });
    const { bands } = readDecayBands(ir, { noise: null, arrivalSeconds: 0, bandsHz: [31, 32] });
    expect(bands[0]?.t20.sentence).toBe(
      'No T20 at 31.5 Hz: the response is too short. A longer pause after the sweep would settle it.',
    );
  });

  it('for an arrival outside the response', () => {
    const ir = noiseAlone(0, 1);
    expect(() => readDecayBands(ir, { noise: null, arrivalSeconds: 2 })).toThrow(RangeError);
    expect(() => readDecayBands(ir, { noise: null, arrivalSeconds: NaN })).toThrow(RangeError);
    expect(() => readDecayBands({ ...ir, samples: new Float64Array(0) }, { noise: null })).toThrow(
      RangeError,
    );
  });
});

describe('two decays in one room', () => {
  /** Closed form: least squares over the levels of the two exponentials' remaining energy. */
  function expected(topDb: number, bottomDb: number): number {
    const at = (t: number): number =>
      0.4 * 10 ** (-6 * (t / 0.4)) + 0.004 * 1.6 * 10 ** (-6 * (t / 1.6));
    const points: [number, number][] = [];
    for (let t = 0; t < 1.4; t += 0.001) {
      const level = 10 * Math.log10(at(t) / at(0));
      if (level <= topDb && level >= bottomDb) points.push([t, level]);
    }
    const x = points.reduce((sum, [t]) => sum + t, 0) / points.length;
    const y = points.reduce((sum, [, level]) => sum + level, 0) / points.length;
    const xx = points.reduce((sum, [t]) => sum + (t - x) ** 2, 0);
    const xy = points.reduce((sum, [t, level]) => sum + (t - x) * (level - y), 0);
    return (-60 * xx) / xy;
  }

  it('bend, and are distrusted', () => {
    const falls = [
      { seconds: 0.4, power: 1 },
      { seconds: 1.6, power: 0.004 },
    ];
    const bands = seeds.slice(0, 8).flatMap((seed) => {
      const ir = decayingNoise({ falls, noiseDb: -75, seed });
      return readDecayBands(ir, {
        noise: noiseAlone(-75, seed),
        arrivalSeconds: 0,
        bandsHz: [3900, 16_000],
      }).bands;
    });
    const t20 = expected(-5, -25);
    const t30 = expected(-5, -35);
    expectClose(
      meanLog(
        bands.map((band) => band.t20),
        t20,
      ),
      0,
      0.03,
      'a mean of 24 readings',
    );
    expectClose(
      meanLog(
        bands.map((band) => band.t30),
        t30,
      ),
      0,
      0.03,
      'a mean of 24 readings',
    );
    for (const band of bands) {
      expect(band.curvature).toBeGreaterThan(10);
      expect(band.t30.trusted).toBe(false);
      expect(band.t20.trusted).toBe(false);
    }
    expect(bands.some(({ t30: { sentence } }) => /straight line|bends/.test(sentence ?? ''))).toBe(
      true,
    );
  });

  it('are trusted when one of them is gone', () => {
    const ir = decayingNoise({ falls: [{ seconds: 0.4, power: 1 }], noiseDb: -75, seed: 1 });
    const { bands } = readDecayBands(ir, {
      noise: noiseAlone(-75, 1),
      arrivalSeconds: 0,
      bandsHz: [3900, 16_000],
    });
    expect(bands.map(({ t30 }) => [t30.trusted, t30.sentence])).toEqual(
      bands.map(() => [true, null]),
    );
  });
});
