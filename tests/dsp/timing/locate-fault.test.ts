import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import { findClicks } from '../../../dsp/timing/click-scores';
import { estimateClock } from '../../../dsp/timing/estimate-clock';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { findCopy } from '../../../dsp/timing/find-copy';
import { findMarks } from '../../../dsp/timing/find-marks';
import { locateFault } from '../../../dsp/timing/locate-fault';
import { joinHalves, repairSegment } from '../../../dsp/timing/repair-segment';
import { expectClose } from '../../close';
import { captureTake, makeRoom, makeTake, truePosition, type MadeFault } from './synthetic-take';

const take = makeTake({ channels: 2, sweepSamples: 2 ** 16, leadSeconds: 0.5 });
const rooms = [0.008, 0.0115].map((delaySeconds, k) =>
  makeRoom({ delaySeconds, t60: 0.3, directDb: -2, seed: 20 + k }),
);
const options = { skewPpm: 40, snrDb: 40 };
const start = take.sweepStarts[1] ?? 0;

/** Capture sample at which the second sweep has run so far of its length. */
function placeOf(share: number): number {
  return Math.round(truePosition(take, options, start + share * take.sweep.lengthSamples));
}

function read(capture: Float64Array) {
  const finding = findMarks(capture, take.rate, take.mark, take.markStarts);
  if (!finding) throw new Error('no marks were found');
  return { capture, clock: estimateClock(finding, take.markStarts) };
}

function captureWith(...faults: readonly MadeFault[]) {
  return read(captureTake(take, rooms, { ...options, faults }));
}

const locate = ({ capture, clock }: ReturnType<typeof read>) =>
  locateFault(capture, clock, 1, take.sweep, start);

describe('locateFault', () => {
  it.each([
    [0.5, 480.37],
    [0.6, 480.37],
    [0.6, 4096],
    [0.75, -1024],
    [0.9, 200],
  ])('finds at %f of the sweep where %f samples were lost', (share, samples) => {
    const atSample = placeOf(share);
    const place = locate(captureWith({ atSample, samples }));
    if (!place) throw new Error('not located');
    expectClose(place.atSample, atSample, Math.max(150, place.reachSamples));
    expectClose(Math.log(place.sweepHz / (20 * 1000 ** share)), 0, 0.3, 'synchronised start');
  });

  it('finds a buffer written twice to the sample', () => {
    const whole = captureTake(take, rooms, options);
    for (const share of [0.1, 0.5]) {
      const at = placeOf(share);
      const twice = new Float64Array(whole.length + 512);
      twice.set(whole.subarray(0, at));
      twice.set(whole.subarray(at - 512), at);
      const place = locate(read(twice));
      expect(place?.found).toBe('copy');
      expect(place?.atSample).toBe(at);
    }
  });

  it('finds no place for what was lost between mark and sweep or where nothing was', () => {
    const before = placeOf(0) - 6000;
    expect(locate(captureWith({ atSample: before, samples: 480 }))).toBeNull();
    expect(locate(captureWith())).toBeNull();
  });
});

describe('repairSegment', () => {
  it.each([480.37, -1024])(
    'puts both halves where they belong after %f lost samples',
    (samples) => {
      const atSample = placeOf(0.6);
      const hurt = captureWith({ atSample, samples });
      const place = locate(hurt);
      if (!place) throw new Error('not located');
      const lead = 4800;
      const length = lead + take.sweep.lengthSamples + 20_000;
      const response = (captured: Float64Array) =>
        deconvolveSweep(captured, lead, take.sweep, { preSamples: lead, lengthSamples: 20_000 });
      const repaired = repairSegment(
        hurt.capture,
        hurt.clock,
        1,
        place.atSample,
        start - lead,
        length,
      );
      const arrival = findArrival(response(repaired.samples));
      const whole = captureWith();
      const straight = repairSegment(whole.capture, whole.clock, 1, atSample, start - lead, length);
      const truth = findArrival(response(straight.samples));
      expectClose(arrival?.seconds, truth?.seconds ?? 0, 1e-5, 'the edges of the gap click');
      const [from, to] = repaired.missing;
      expectClose(to - from, Math.max(0, samples), 2);
    },
  );

  it('joins two stretches with zeros between them', () => {
    const joined = joinHalves(new Float64Array(100).fill(1), new Float64Array(100).fill(2), 40, 60);
    expect(joined.missing).toEqual([40, 60]);
    expect([joined.samples[20], joined.samples[50], joined.samples[90]]).toEqual([1, 0, 2]);
  });

  it('cuts without a gap where nothing is missing', () => {
    const joined = joinHalves(new Float64Array(10).fill(1), new Float64Array(10).fill(2), 4, 4);
    expect([...joined.samples]).toEqual([1, 1, 1, 1, 2, 2, 2, 2, 2, 2]);
  });
});

describe('findCopy', () => {
  const normal = gaussian(seededRandom(8));
  const noise = new Float64Array(5000).map(() => Math.round(100 * normal()));

  it('finds where samples start to repeat', () => {
    const twice = Float64Array.of(...noise.slice(0, 2000), ...noise.slice(1872));
    expect(findCopy(twice, 0, twice.length, 128)).toBe(2000);
    expect(findCopy(twice, 2200, twice.length, 128)).toBeNull();
  });

  it('finds none in noise or silence', () => {
    expect(findCopy(noise, 0, noise.length, 128)).toBeNull();
    expect(findCopy(new Float64Array(1000), 0, 1000, 128)).toBeNull();
    expect(() => findCopy(noise, 0, 100, 0)).toThrow(RangeError);
  });
});

describe('findClicks', () => {
  it('finds a jump in a tone and none in a whole one', () => {
    const normal = gaussian(seededRandom(9));
    const tone = (jump: number) =>
      Float64Array.from(
        { length: 20_000 },
        (_, n) => Math.sin(0.02 * (n < 9000 ? n : n + jump)) + 1e-3 * normal(),
      );
    const hz = (0.02 * 48_000) / (2 * Math.PI);
    const find = (jump: number) => findClicks(tone(jump), 48_000, 0, 20_000, () => hz, 8);
    expect(find(0)).toEqual([]);
    expectClose(find(100)[0]?.sample, 9000, 64);
  });
});
