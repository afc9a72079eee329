import { describe, expect, it } from 'vitest';
import { bandEnvelope, envelopeOnset } from '../../../dsp/bass/band-envelope';
import { pathResponse, throughPath } from '../../../dsp/bass/electrical-path';
import { levelOut } from '../../../dsp/bass/level-out';
import { meanSpeaker } from '../../../dsp/bass/mean-speaker';
import type { Transfer } from '../../../dsp/bass/transfer';
import type { FilterSpec } from '../../../dsp/filter/analogue';
import { expectClose } from '../../close';
import { arrivals, directSound, hz } from './seat-responses';

const band: FilterSpec[] = [
  { family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: 25 },
  { family: 'butterworth', kind: 'low-pass', order: 4, cutoffHz: 150 },
];

describe('meanSpeaker', () => {
  it('of sources that are flat is flat and not late, whatever their delays', () => {
    const found = meanSpeaker(hz, directSound([0.004, 0.011, 0.03]));
    expectClose(found?.re, new Float64Array(hz.length).fill(1), 1e-9);
    expectClose(found?.im, new Float64Array(hz.length), 1e-9);
  });

  it('plays a band as late as a speaker that rolls off does, within a tenth of a period', () => {
    const seats = throughPath(directSound([0.01, 0.02]), { filters: band }, hz);
    const peak = (one: Transfer): number =>
      envelopeOnset(bandEnvelope(one, { hz, lowHz: 36, highHz: 176 }), 1) ?? NaN;
    const trueSeconds = peak(pathResponse({ filters: band }, hz));
    // A flat speaker's stands at 0.
    expect(trueSeconds).toBeGreaterThan(0.2 / 80);
    expectClose(peak(meanSpeaker(hz, seats) ?? arrivals([])), trueSeconds, 0.1 / 80);
  });

  it('is null for silence', () => {
    expect(meanSpeaker(hz, [arrivals([])])).toBeNull();
  });
});

describe('levelOut', () => {
  it('takes a source out, half where it is 20 dB down', () => {
    const source = arrivals([{ seconds: 0.002, gain: 2 }]);
    const scaled = hz.map((f) => (f < 100 ? 1 : 0.1));
    const own = {
      re: source.re.map((x, k) => x * (scaled[k] ?? 0)),
      im: source.im.map((x, k) => x * (scaled[k] ?? 0)),
    };
    const [found] = levelOut([own], own);
    expectClose(
      found?.re,
      hz.map((f) => (f < 100 ? 1 / 1.01 : 0.5)),
      1e-9,
    );
    expectClose(found?.im, new Float64Array(hz.length), 1e-9);
  });

  it('refuses another grid', () => {
    const one = arrivals([{ seconds: 0, gain: 1 }]);
    const short = { re: one.re.slice(1), im: one.im.slice(1) };
    expect(() => levelOut([short], one)).toThrow(RangeError);
  });
});
