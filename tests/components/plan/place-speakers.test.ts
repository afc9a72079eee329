import { describe, expect, it } from 'vitest';
import { placeSpeakers, ringRadii, scaleOf } from '../../../components/plan/place-speakers';
import { layoutOf } from '../fake-bench';
import { sampleReadings } from '../sample-readings';

const layout = layoutOf('5.2.4');

function placed(label: string, measured: boolean) {
  const all = placeSpeakers(layout, measured ? sampleReadings(layout) : null, 2);
  const one = all.find((speaker) => speaker.channel.label === label);
  if (!one) throw new RangeError(`no ${label}`);
  return one;
}

describe('speakers on the plan', () => {
  it('stand at the nominal distance before they are measured', () => {
    const { rightMetres, backMetres, distanceMetres } = placed('FL', false);
    expect(rightMetres).toBeCloseTo(-1); // 2 m · sin 30°
    expect(backMetres).toBeCloseTo(-Math.sqrt(3)); // 2 m · cos 30°, ahead
    expect(distanceMetres).toBeNull();
  });

  it('stand at their measured distance afterwards', () => {
    const { rightMetres, backMetres, distanceMetres } = placed('SiR', true);
    expect(Math.hypot(rightMetres, backMetres)).toBeCloseTo(distanceMetres ?? 0);
    expect(rightMetres).toBeGreaterThan(0);
    expect(backMetres).toBeGreaterThan(0);
  });

  it('show of a height only the horizontal share of its distance', () => {
    const { rightMetres, backMetres, distanceMetres } = placed('TpFL', true);
    // 30° up: cos 30° of the straight line.
    expect(Math.hypot(rightMetres, backMetres)).toBeCloseTo(0.8660254 * (distanceMetres ?? 0), 6);
  });

  it('never stand at a distance that cannot be', () => {
    const readings = sampleReadings(layout);
    const channels = readings.channels.map((one) => ({ ...one, distanceMetres: -56 }));
    const before = placeSpeakers(layout, null, 2);
    expect(placeSpeakers(layout, { ...readings, channels }, 2)).toEqual(before);
  });

  it('keep a sub where it was drawn: the delay inside it is no distance', () => {
    const before = placed('Sub 1', false);
    const readings = sampleReadings(layout);
    const channels = readings.channels.map((one) => ({ ...one, distanceMetres: 6.7 }));
    const all = placeSpeakers(layout, { ...readings, channels }, 2);
    const after = all.find((one) => one.channel.label === 'Sub 1');
    expect(after).toEqual({ ...before, distanceMetres: 6.7, located: false });
  });
});

describe('distance rings', () => {
  it('stand at every metre up to the farthest speaker', () => {
    expect(ringRadii(placeSpeakers(layout, null, 2))).toEqual([1, 2]);
  });

  it('stand at every second metre in a large room', () => {
    expect(ringRadii(placeSpeakers(layout, null, 7))).toEqual([2, 4, 6, 8]);
  });

  it('stay few however far a speaker stands', () => {
    expect(ringRadii(placeSpeakers(layout, null, 45))).toEqual([10, 20, 30, 40, 50]);
  });

  it('stay few for a distance that can only be mistaken', () => {
    expect(ringRadii(placeSpeakers(layout, null, 9999))).toEqual([10000]);
  });
});

describe('the scale of the plan', () => {
  it('leaves room for labels beside the widest speaker', () => {
    const speakers = placeSpeakers(layout, null, 2);
    const widest = Math.max(...speakers.map((one) => Math.abs(one.rightMetres)));
    expect(widest * scaleOf(speakers, 150)).toBeLessThanOrEqual(150 - 48 + 1e-9);
  });
});
