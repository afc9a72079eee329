import { describe, expect, it } from 'vitest';
import type { RolloffReading } from '../../../src/reading/reading';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { newSession } from '../../../src/session/new-session';
import type { SessionBench } from '../../../src/session/session-bench';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { layoutNamed } from '../reading/wired-room';
import { makeBench, until } from './make-bench';

const close = {
  name: 'Close to FL',
  kind: 'close',
  close: { channel: 'FL', coneOnly: false },
} as const;

function rolloffOf(bench: SessionBench): RolloffReading {
  const { readings, trouble } = bench.state;
  const rolloff = readings?.channels.find(({ channel }) => channel === 'FL')?.rolloff;
  if (!rolloff) throw new Error(trouble?.sentence ?? 'no roll-off was read');
  return rolloff;
}

const { take } = newSession('', '');

const width = ({ f6Hz }: RolloffReading): number => Math.log(f6Hz.interval[1] / f6Hz.interval[0]);

describe('a microphone held close to a speaker', () => {
  it.each([2, 4, 6])('reads its roll-off narrower than the seat does, in room %i', async (seed) => {
    const layout = layoutFromName('2.0');
    if (isTrouble(layout)) throw new Error(layout.sentence);
    const practice = { seed, hidden: null, gainDb: -20, slips: [] };
    const { bench } = makeBench({}, { practice, take });
    await bench.startTake();
    const seat = rolloffOf(bench);
    const here = bench.state.document.position.id;
    bench.setPosition(close);
    await bench.startTake();
    const near = rolloffOf(bench);
    expect(width(near)).toBeLessThan(0.6 * width(seat));
    const truth = practiceTruth(layout, seed).channels.find(({ channel }) => channel === 'FL');
    const [low, high] = near.f6Hz.interval;
    // At 12 cm, not at the cone, some of the room is still heard.
    expect(truth?.f6Hz).toBeGreaterThan(0.93 * low);
    expect(truth?.f6Hz).toBeLessThan(1.07 * high);
    // Back at the seat it decides for both fronts, and the proposal says so.
    bench.setPosition(here);
    const { together } = await until(bench, (state) => state.together.length > 0);
    const [front] = together;
    expect(front?.order).toMatchObject({ channels: ['FL', 'FR'], heard: [] });
    expect(front?.finding.rolloff?.f6Hz.median).toBeCloseTo(near.f6Hz.median, 1);
    const { proposal } = await until(bench, (state) => state.proposal !== null);
    expect(proposal?.groups[0]?.reason).toContain('read from close to FL');
  });

  it('reads its takes again, wider, once a port is said to be unheard', async () => {
    const { bench } = makeBench(
      {},
      { practice: { seed: 4, hidden: null, gainDb: -20, slips: [] }, take },
    );
    bench.setPosition(close);
    await bench.startTake();
    const whole = rolloffOf(bench);
    const { position } = bench.state.document;
    bench.change('Say what is heard close', (before) => ({
      ...before,
      takes: before.takes.map((take) => ({
        ...take,
        position: { ...position, close: { channel: 'FL', coneOnly: true } },
        outdated: true,
      })),
    }));
    await expect.poll(() => bench.state.activity.kind, { timeout: 30_000 }).toBe('idle');
    await expect.poll(() => bench.state.readings !== null, { timeout: 30_000 }).toBe(true);
    expect(width(rolloffOf(bench))).toBeGreaterThan(width(whole));
  });

  it('sums the cone with the port taken by itself, once back at the seat', async () => {
    const { bench } = makeBench(
      {},
      { practice: { seed: 4, hidden: null, gainDb: -20, slips: [] }, take },
    );
    await bench.startTake();
    const here = bench.state.document.position.id;
    bench.setPosition({ ...close, close: { channel: 'FL', coneOnly: true } });
    await bench.startTake();
    const port = { coneMetres: 0.13, portMetres: 0.05 };
    bench.setPosition({
      name: 'Port of FL',
      kind: 'close',
      close: { channel: 'FL', coneOnly: false, port },
    });
    await bench.startTake();
    const heard = bench.state.readings?.channels.find(({ channel }) => channel === 'FL');
    expect(heard?.rolloff).toBeNull();
    expect(heard?.notes.join(' ')).toContain('counts together with the cone');
    bench.setPosition(here);
    const { together } = await until(bench, (state) => state.together.length > 0);
    expect(together[0]?.order.close?.port?.size).toEqual(port);
    // The practice room lets the whole speaker be heard at both: any sum of the two is the speaker.
    const truth = practiceTruth(layoutNamed('2.0'), 4).channels[0];
    const [low, high] = together[0]?.finding.rolloff?.f6Hz.interval ?? [0, 0];
    expect(truth?.f6Hz).toBeGreaterThan(0.93 * low);
    expect(truth?.f6Hz).toBeLessThan(1.07 * high);
  });
});
