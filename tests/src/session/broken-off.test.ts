import { describe, expect, it } from 'vitest';
import type { Schedule } from '../../../src/take/schedule';
import { trouble } from '../../../src/trouble';
import { captureOf, fakeRig } from './fake-rig';
import { makeBench, settled } from './make-bench';
import { toldReadings } from './told-readings';

const hidden = trouble('hidden', 'The page was hidden.');

/** A live take of three speakers that ends when `heard` of it was captured. */
function brokenOff(heard: (schedule: Schedule) => number, readable = true) {
  const room = fakeRig({
    end(_take, { schedule }, options) {
      options.onPartial?.(captureOf(77, true), heard(schedule));
      return hidden;
    },
  });
  const made = makeBench(
    {
      makeRig: () => Promise.resolve(room.rig),
      read: (schedule) =>
        Promise.resolve(readable ? toldReadings(schedule) : trouble('other-take', 'No marks.')),
    },
    { rig: 'live', layout: '3.0' },
  );
  return { ...room, ...made };
}

const afterTwo = ({ markStarts, mark }: Schedule): number =>
  (markStarts[2] ?? 0) + mark.lengthSamples;

describe('a take that breaks off', () => {
  it('keeps and reads the speakers that were finished, and says why it ended', async () => {
    const { bench, held, played } = brokenOff(afterTwo);
    await bench.startTake();
    await settled();
    const finished = played[0]?.swept.slice(0, 2);
    expect(bench.state.readings?.channels.map(({ channel }) => channel)).toEqual(finished);
    const missing = played[0]?.swept.slice(2);
    expect(bench.state.toRepeat).toEqual(missing);
    expect(bench.state.trouble?.trouble).toBe('hidden');
    expect(bench.state.trouble?.sentence).toContain(hidden.sentence);
    expect(bench.state.trouble?.sentence).toContain(finished?.join(', '));
    const [take] = bench.state.document.takes;
    expect(held.captures.get(take?.captureId ?? '')?.length).toBe(77);
    expect(held.captures.get(take?.loopbackId ?? '')?.length).toBe(77);
  });

  it('keeps the recording when it cannot be read, and says so', async () => {
    const { bench, held } = brokenOff(afterTwo, false);
    await bench.startTake();
    await settled();
    expect(bench.state.trouble?.sentence).toContain('was not read: No marks.');
    const [take] = bench.state.document.takes;
    expect(take?.readings).toBeNull();
    expect(held.captures.has(take?.captureId ?? '')).toBe(true);
  });

  it('keeps nothing when no speaker was finished', async () => {
    const { bench, held } = brokenOff(({ segments }) => segments[0]?.sweepStart ?? 0);
    const before = bench.state.document;
    await bench.startTake();
    expect(bench.state.trouble).toBe(hidden);
    expect(bench.state.document).toBe(before);
    expect(held.captures.size).toBe(0);
  });
});
