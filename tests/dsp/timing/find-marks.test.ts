import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { estimateClock } from '../../../dsp/timing/estimate-clock';
import { findMarks } from '../../../dsp/timing/find-marks';
import { expectClose } from '../../close';
import { read, roomsOf } from './read-capture';
import { captureTake, makeTake, truePosition } from './synthetic-take';

const six = makeTake({ channels: 6 });

describe('findMarks', () => {
  it('spaces all marks of a clean capture to a hundredth of a sample', () => {
    const options = { skewPpm: 80, snrDb: 30, latencySeconds: 2.7 };
    const { finding } = read(six, options);
    const errors = finding.marks.map(
      (mark, k) => (mark?.position ?? 0) - truePosition(six, options, six.markStarts[k] ?? 0),
    );
    const first = errors[0] ?? 0;
    expectClose(
      errors.map((error) => error - first),
      errors.map(() => 0),
      0.01,
    );
    expect(finding.take).toBe('this take');
    expect(finding.confidence).toBeGreaterThan(0.95);
    expect(Math.abs(first) / 48_000).toBeLessThan(0.03);
  });

  it('reports the signal to noise ratio of each mark', () => {
    // White noise: of its power, 10 of 24 kHz lie in the mark's band; the template's window is
    // 70 ms long, the power that the ratio was set by is spread over 30.
    const expected = 20 + 10 * Math.log10(24 / 10) - 10 * Math.log10(70 / 30);
    const { finding } = read(six, { snrDb: 20 });
    expectClose(
      finding.marks.map((mark) => mark?.snrDb),
      finding.marks.map(() => expected),
      1.5,
      'one noise of 70 ms',
    );
  });

  it('finds marks at 10 dB in a long reverberation', () => {
    const { finding } = read(six, { snrDb: 10, skewPpm: -300 }, roomsOf(6, 1, -10));
    expect(finding.marks.every((mark) => mark !== null)).toBe(true);
    expect(finding.take).toBe('this take');
  });

  it('does without a first mark that a receiver muted', () => {
    const { finding, clock } = read(six, { muteSeconds: 1.6, skewPpm: 40, snrDb: 30 });
    expect(finding.marks[0]).toBeNull();
    expect(finding.marks.slice(1).every((mark) => mark !== null)).toBe(true);
    expect(clock.segments.map(({ standing }) => standing)).toEqual([
      'doubtful',
      ...Array<string>(6).fill('marked'),
    ]);
    expectClose(clock.skewPpm, 40, 0.1);
  });

  it('is not led astray by a silent speaker or by louder ones', () => {
    const rooms = roomsOf(6).map((room, k) => (k === 3 ? null : room.map((v) => v * (k ? 4 : 1))));
    const { finding, clock } = read(six, { snrDb: 20, skewPpm: 40 }, rooms);
    expect(finding.take).toBe('this take');
    expect(finding.strayMarks).toEqual([]);
    expectClose(clock.skewPpm, 40, 0.1);
  });

  it('finds the marks of an inverted reference speaker', () => {
    const rooms = roomsOf(6).map((room) => room.map((value) => -value));
    const { finding, clock } = read(six, { snrDb: 20, skewPpm: 40 }, rooms);
    expect(finding.take).toBe('this take');
    expectClose(clock.skewPpm, 40, 0.1);
  });

  it('finds marks that were clipped', () => {
    const options = { skewPpm: 25, snrDb: 40 };
    const capture = captureTake(six, roomsOf(6), options).map((value) =>
      Math.min(0.05, Math.max(-0.05, value)),
    );
    const finding = findMarks(capture, 48_000, six.mark, six.markStarts);
    if (!finding) throw new Error('no marks were found');
    expectClose(estimateClock(finding, six.markStarts).skewPpm, 25, 0.1);
  });

  it('finds the take in a recording that was stopped too early', () => {
    const options = { skewPpm: 25, snrDb: 30 };
    const capture = captureTake(six, roomsOf(6), options);
    const stopped = capture.subarray(
      0,
      truePosition(six, options, (six.markStarts[3] ?? 0) + 9000),
    );
    const finding = findMarks(stopped, 48_000, six.mark, six.markStarts);
    expect(finding?.take).toBe('this take');
    expect(finding?.marks.map((mark) => mark !== null)).toEqual([
      ...Array<boolean>(4).fill(true),
      ...Array<boolean>(3).fill(false),
    ]);
  });

  it('tells a take with another pattern of spacings', () => {
    for (const channels of [2, 6]) {
      const take = makeTake({ channels });
      const other = makeTake({ channels, seed: 9 });
      const capture = captureTake(other, roomsOf(channels), { snrDb: 30 });
      expect(findMarks(capture, 48_000, take.mark, take.markStarts)?.take).toBe('other take');
    }
  });

  it('tells a longer take that begins with the same spacings', () => {
    const short = { ...six, markStarts: six.markStarts.slice(0, 4) };
    const capture = captureTake(six, roomsOf(6), { snrDb: 30 });
    const finding = findMarks(capture, 48_000, short.mark, short.markStarts);
    expect(finding?.take).toBe('other take');
    expect(finding?.strayMarks).toHaveLength(3);
  });

  it('takes one of two runs of the same take', () => {
    const take = makeTake({ channels: 3 });
    const once = captureTake(take, roomsOf(3), { snrDb: 30 });
    const twice = new Float64Array(2 * once.length);
    twice.set(once);
    twice.set(once, once.length);
    expect(findMarks(twice, 48_000, take.mark, take.markStarts)?.take).toBe('this take');
  });

  it('finds nothing in silence and no take in noise', () => {
    expect(findMarks(new Float64Array(200_000), 48_000, six.mark, six.markStarts)).toBeNull();
    const normal = gaussian(seededRandom(4));
    const noise = new Float64Array(600_000).map(() => 0.1 * normal());
    const finding = findMarks(noise, 48_000, six.mark, six.markStarts);
    expect(finding?.confidence ?? 0).toBeLessThan(0.2);
    expect(finding?.take ?? 'unclear').not.toBe('this take');
  });

  it('refuses starts that do not increase', () => {
    const capture = new Float64Array(1000);
    expect(() => findMarks(capture, 48_000, six.mark, [5])).toThrow(RangeError);
    expect(() => findMarks(capture, 48_000, six.mark, [5, 5])).toThrow(/5, 5/);
    expect(() => findMarks(capture, 22_050, six.mark, [5, 9])).toThrow(/22050/);
  });
});
