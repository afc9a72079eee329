import { describe, expect, it } from 'vitest';
import { bandEnvelope, envelopeOnset } from '../../../dsp/bass/band-envelope';
import { delayCentre } from '../../../dsp/bass/delay-centre';
import { throughPath } from '../../../dsp/bass/electrical-path';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import type { CrossoverTerms } from '../../../dsp/bass/played-sides';
import type { SeatTransfers, Transfer } from '../../../dsp/bass/transfer';
import { seededRandom } from '../../../dsp/signal/random';
import { expectClose } from '../../close';
import { arrivals, directSound, echoes, hz } from './seat-responses';

const band = { hz, lowHz: 40, highHz: 160 };

type CrossoverFilters = Pick<CrossoverTerms, 'highPass' | 'lowPass'>;
const bare: CrossoverFilters = { highPass: [], lowPass: [] };

describe('bandEnvelope', () => {
  it('of one arrival has its largest value there, twice the area of the band', () => {
    for (const seconds of [0, 0.012, 0.1]) {
      const envelope = bandEnvelope(arrivals([{ seconds, gain: 0.5 }]), band);
      const most = Math.max(...envelope.values);
      const at = envelope.startSeconds + envelope.values.indexOf(most) * envelope.stepSeconds;
      expectClose(at, seconds, envelope.stepSeconds / 2 + 1e-9);
      // Skirts by the midpoint rule.
      const steps = 10_000;
      let area = 120;
      for (let n = 0; n < steps; n++) {
        const out = (0.35 * (n + 0.5)) / steps;
        const gain = 0.5 * (1 + Math.cos((Math.PI * out) / 0.35));
        const width = (0.35 / steps) * Math.LN2;
        area += gain * width * (40 * 2 ** -out + 160 * 2 ** out);
      }
      expectClose(most, 0.5 * 2 * area, 0.02 * area, 'trapezoids, and times between its values');
    }
  });

  it('refuses a band or times upside down, and a band beside the grid', () => {
    const one = arrivals([{ seconds: 0, gain: 1 }]);
    expect(() => bandEnvelope(one, { ...band, highHz: 30 })).toThrow(RangeError);
    expect(() => bandEnvelope(one, { ...band, toSeconds: -1 })).toThrow(RangeError);
    expect(() => bandEnvelope(one, { hz, lowHz: 2000, highHz: 3000 })).toThrow(RangeError);
  });
});

describe('envelopeOnset', () => {
  const ramp = { startSeconds: 1, stepSeconds: 0.5, values: new Float64Array([0, 2, 4, 1]) };

  it('lies straight between two values', () => {
    expectClose(envelopeOnset(ramp, 0.25), 1.25, 1e-12);
    expectClose(envelopeOnset(ramp, 1), 2, 1e-12);
  });

  it('of silence is null, and of what starts high the start', () => {
    expect(envelopeOnset({ ...ramp, values: new Float64Array(4) }, 0.3)).toBeNull();
    expectClose(envelopeOnset({ ...ramp, values: new Float64Array([4, 1]) }, 0.3), 1, 0);
  });
});

describe('delayCentre', () => {
  const between = (main: SeatTransfers, sub: SeatTransfers, filters: CrossoverFilters = bare) =>
    delayCentre([{ seats: main }], sub, { hz, crossoverHz: 80, ...filters });

  it('is the delay between two sources that are alike', () => {
    const found = between(directSound([0.01, 0.014]), directSound([0.007, 0.011]));
    expectClose(found, 0.003, 1e-5);
  });

  it('is the delay by which echoes of the same room are moved', () => {
    const main = echoes(seededRandom(5), 3, 0.02);
    const sub = echoes(seededRandom(5), 3, 0.015);
    expectClose(between(main, sub), 0.005, 1e-4);
  });

  it('lines up the peaks that filters give, not their onsets', () => {
    const paired: CrossoverFilters = {
      highPass: [{ family: 'linkwitz-riley', kind: 'high-pass', order: 4, cutoffHz: 80 }],
      lowPass: [{ family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz: 80 }],
    };
    const at = directSound([0.02, 0.021, 0.022]);
    // The pair is in phase, so its best delay is none, and a quarter period off counts for nothing.
    expectClose(between(at, at, paired), 0, 1 / 320);
  });

  it('takes the direct sounds where a sub that rolls off is drowned by what comes after', () => {
    const alone = arrivals([{ seconds: 0.02, gain: 1 }]);
    const late = [0.031, 0.044, 0.058].map((seconds, n) => ({ seconds, gain: 1.3 - 0.3 * n }));
    const filters: FilterSpec[] = [
      { family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: 25 },
      { family: 'butterworth', kind: 'low-pass', order: 4, cutoffHz: 150 },
    ];
    const rolledOff = (one: Transfer) => throughPath([one], { filters }, hz);
    const paired: CrossoverFilters = {
      highPass: [{ family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: 80 }],
      lowPass: [{ family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz: 80 }],
    };
    const dry = between([alone], rolledOff(alone), paired);
    const drowned = rolledOff(arrivals([{ seconds: 0.02, gain: 1 }, ...late]));
    // A fifth of a period.
    expectClose(between([alone], drowned, paired), dry ?? NaN, 0.2 / 80);
  });

  it('of silence is null', () => {
    const silent = [arrivals([])];
    expect(between(silent, silent)).toBeNull();
  });
});
