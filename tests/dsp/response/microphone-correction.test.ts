import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filterSamples, sectionsResponse, type Biquad } from '../../../dsp/filter/biquad';
import { realSpectrum } from '../../../dsp/fft/fft';
import {
  correctForMicrophone,
  microphoneGainDb,
  type MicrophoneResponse,
} from '../../../dsp/response/microphone-correction';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { expectClose } from '../../close';

const sampleRate = 48_000;
const length = 65_536;
const zeroIndex = 8160;

/** A response like a room's: a direct sound and a decaying tail. */
function room(): { samples: Float64Array; sampleRate: number; zeroIndex: number } {
  const normal = gaussian(seededRandom(11));
  const samples = new Float64Array(length);
  for (let n = zeroIndex + 300; n < length; n++) {
    samples[n] = 0.05 * normal() * Math.exp(-(n - zeroIndex) / 1500);
  }
  samples[zeroIndex + 200] = 1;
  samples[zeroIndex + 201] = 0.4;
  return { samples, sampleRate, zeroIndex };
}

/** Microphone of minimum phase: a low end, a broad hump near 9 kHz. */
const sections: readonly Biquad[] = [
  highPass(12),
  { b0: 1.12, b1: 0.35, b2: 0.21, a1: 0.25, a2: 0.18 },
];

function highPass(hz: number): Biquad {
  const p = Math.exp((-2 * Math.PI * hz) / sampleRate);
  return { b0: (1 + p) / 2, b1: -(1 + p) / 2, b2: 0, a1: -p, a2: 0 };
}

/** The microphone's file: 24 points an octave from 3 Hz to half the rate. */
function fileOf(filter: readonly Biquad[], withPhase: boolean): MicrophoneResponse {
  const hz: number[] = [];
  for (let f = 3; f < 24_000; f *= 2 ** (1 / 24)) hz.push(f);
  const responses = hz.map((f) => sectionsResponse(filter, f, sampleRate));
  return {
    hz,
    db: responses.map(({ re, im }) => 20 * Math.log10(Math.hypot(re, im))),
    phaseDegrees: withPhase
      ? responses.map(({ re, im }) => (180 / Math.PI) * Math.atan2(im, re))
      : null,
  };
}

function levels(samples: Float64Array, from: number, to: number): number[] {
  const size = 131_072;
  const spectrum = realSpectrum(samples, size);
  const found: number[] = [];
  for (let hz = from; hz < to; hz *= 1.05) {
    const k = Math.round((hz * size) / sampleRate);
    found.push(20 * Math.log10(Math.hypot(spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0)));
  }
  return found;
}

describe('correctForMicrophone', () => {
  it('changes nothing for a flat microphone', () => {
    const ir = room();
    const flat = { hz: [10, 100, 1000, 10_000, 20_000], db: [0, 0, 0, 0, 0], phaseDegrees: null };
    expectClose(correctForMicrophone(ir, flat), ir, 1e-9);
    const phased = { ...flat, phaseDegrees: [0, 0, 0, 0, 0] };
    expectClose(correctForMicrophone(ir, phased), ir, 1e-9);
  });

  it.each([
    ['minimum phase', false, 0.005],
    ["the file's phase, whose part below the file spreads ahead of the response", true, 0.03],
  ])('gives back what a microphone heard, by %s', (_, withPhase, tolerance) => {
    const ir = room();
    const heard = { ...ir, samples: filterSamples(ir.samples, sections) };
    const corrected = correctForMicrophone(heard, fileOf(sections, withPhase));
    const differences = levels(corrected.samples, 20, 20_000).map(
      (db, i) => db - (levels(ir.samples, 20, 20_000)[i] ?? 0),
    );
    expectClose(
      differences,
      differences.map(() => 0),
      tolerance,
    );
  });

  it('moves no arrival by more than a microsecond', () => {
    const ir = room();
    const heard = { ...ir, samples: filterSamples(ir.samples, sections) };
    const corrected = correctForMicrophone(heard, fileOf(sections, false));
    const before = findArrival(ir)?.seconds ?? Number.NaN;
    const after = findArrival(corrected)?.seconds ?? Number.NaN;
    expectClose(after, before, 1e-6);
  });

  it('takes a delay out that the phase holds', () => {
    const ir = room();
    const hz = Array.from({ length: 200 }, (_, i) => 20 * 10 ** (i / 64.6));
    const late = {
      hz,
      db: hz.map(() => 0),
      phaseDegrees: hz.map((f) => -360 * f * (2 / sampleRate)),
    };
    const corrected = correctForMicrophone(ir, late);
    expectClose(corrected.samples[zeroIndex + 198], 1, 0.01);
    expectClose(corrected.samples[zeroIndex + 199], 0.4, 0.01);
  });

  it('makes up at most 20 dB', () => {
    const ir = room();
    const deaf = { hz: [10, 50, 100, 1000, 10_000], db: [-40, -40, 0, 0, 0], phaseDegrees: null };
    expect(microphoneGainDb(deaf, 20)).toBe(-20);
    const low = levels(correctForMicrophone(ir, deaf).samples, 20, 40);
    const gain = low.map((db, i) => db - (levels(ir.samples, 20, 40)[i] ?? 0));
    expect(Math.max(...gain)).toBeLessThan(20.5);
  });

  it('stays finite for any file that is accepted', () => {
    const ir = { samples: Float64Array.from([0, 1, 0.5, -0.2]), sampleRate: 44_100, zeroIndex: 1 };
    const point = fc.record({
      hz: fc.double({ min: 0.01, max: 200_000, noNaN: true }),
      db: fc.double({ min: -40, max: 40, noNaN: true }),
      degrees: fc.double({ min: -3600, max: 3600, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.uniqueArray(point, { minLength: 1, selector: (p) => p.hz }), (points) => {
        const sorted = points.toSorted((a, b) => a.hz - b.hz);
        const corrected = correctForMicrophone(ir, {
          hz: sorted.map((p) => p.hz),
          db: sorted.map((p) => p.db),
          phaseDegrees: sorted.map((p) => p.degrees),
        });
        expect(corrected.samples.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 20, seed: 4 },
    );
  });

  it('refuses a microphone without points, or with uneven columns', () => {
    const none = { hz: [], db: [], phaseDegrees: null };
    expect(() => correctForMicrophone(room(), none)).toThrow(RangeError);
    expect(() => microphoneGainDb({ hz: [1, 2], db: [0], phaseDegrees: null }, 1)).toThrow(
      RangeError,
    );
  });
});

describe('microphoneGainDb', () => {
  const microphone = { hz: [20, 80, 1280], db: [-4, 0, 8], phaseDegrees: null };

  it('is linear in log frequency between the points', () => {
    expectClose(microphoneGainDb(microphone, 40), -2, 1e-12);
    expectClose(microphoneGainDb(microphone, 160), 2, 1e-12);
    expectClose(microphoneGainDb(microphone, 80), 0, 1e-12);
  });

  it('keeps the end values outside', () => {
    expect(microphoneGainDb(microphone, 0)).toBe(-4);
    expect(microphoneGainDb(microphone, 20_000)).toBe(8);
  });
});
