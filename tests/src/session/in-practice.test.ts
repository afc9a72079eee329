import { describe, expect, it } from 'vitest';
import { practiceRig } from '../../../src/rig/practice';
import type { Rig } from '../../../src/rig/port';
import { isTrouble, trouble } from '../../../src/trouble';
import { makeBench } from './make-bench';

/** Sweeps long enough to leave other sound in sight. */
const wholeSweeps = {
  sweepSeconds: 2 ** 17 / 48000,
  averages: 1,
  pauseSeconds: 0,
  overlap: false,
  repeats: 1,
};

describe('the bench in the practice room', () => {
  it('finds a slammed door, repeats that speaker alone and reads it as if nothing had been', async () => {
    const quiet = makeBench({}, { layout: '3.0', take: wholeSweeps }).bench;
    await quiet.startTake();
    let takes = 0;
    const { bench } = makeBench(
      {
        makeRig: (session, layout) =>
          Promise.resolve(
            practiceRig({
              layout,
              seed: session.practice.seed,
              faults: () =>
                takes++ === 0
                  ? { disturbances: [{ kind: 'bang', channel: 'FC', peakDb: -3 }] }
                  : {},
            }),
          ),
      },
      { layout: '3.0', take: wholeSweeps },
    );
    await bench.startTake();
    expect(bench.state.trouble).toBeNull();
    const [first, repeat] = bench.state.document.takes;
    const faulty = first?.readings?.channels.find(({ faults }) => faults.length > 0);
    expect(faulty?.channel).toBe('FC');
    expect(repeat?.readings?.channels.map(({ channel }) => channel)).toEqual(['FL', 'FC']);
    expect(bench.state.toRepeat).toEqual([]);
    const centre = bench.state.readings?.channels.find(({ channel }) => channel === 'FC');
    const truth = quiet.state.readings?.channels.find(({ channel }) => channel === 'FC');
    expect(centre?.faults).toEqual([]);
    expect(centre?.distanceMetres ?? 0).toBeCloseTo(truth?.distanceMetres ?? -1, 2);
    expect(centre?.levelDb ?? 0).toBeCloseTo(truth?.levelDb ?? -1, 1);
  });

  it('reads the speakers that were finished when a take broke off, as the whole take reads them', async () => {
    const whole = makeBench({}, { layout: '3.0' }).bench;
    await whole.startTake();
    const { bench } = makeBench(
      {
        makeRig(session, layout) {
          const rig = practiceRig({ layout, seed: session.practice.seed });
          const breaking: Rig = {
            ...rig,
            async play(schedule, options) {
              const capture = await rig.play(schedule, options);
              if (isTrouble(capture)) return capture;
              const heard = (schedule.markStarts[2] ?? 0) + schedule.mark.lengthSamples;
              const samples = capture.samples.slice(0, heard + 2 * capture.sampleRate);
              options.onPartial?.({ ...capture, samples }, heard);
              return trouble('device-gone', 'The microphone went away.');
            },
          };
          return Promise.resolve(breaking);
        },
      },
      { layout: '3.0' },
    );
    await bench.startTake();
    expect(bench.state.trouble?.sentence).toContain('The microphone went away.');
    const kept = bench.state.readings?.channels ?? [];
    expect(kept.map(({ channel }) => channel)).toEqual(['FL', 'FR']);
    expect(bench.state.toRepeat).toEqual(['FC']);
    for (const reading of kept) {
      const other = whole.state.readings?.channels.find((one) => one.channel === reading.channel);
      expect(reading.distanceMetres ?? 0).toBeCloseTo(other?.distanceMetres ?? -1, 2);
      expect(reading.levelDb ?? 0).toBeCloseTo(other?.levelDb ?? -1, 1);
    }
  });
});
