import { afterEach, describe, expect, it, vi } from 'vitest';
import type { CapturedBlock, LineOptions, Rig } from '../../../src/rig/port';
import { openEar, type Ear } from '../../../src/soundlevel/hear-line';
import { isTrouble, trouble } from '../../../src/trouble';
import { fakeRig } from './fake-rig';

interface Hand {
  readonly rig: Rig;
  readonly give: (frame: number, samples: readonly number[]) => void;
  readonly options: () => LineOptions;
  readonly closed: () => number;
}

/** A rig whose blocks are handed over by the test. */
function rigByHand(sampleRate = 48_000): Hand {
  let given: LineOptions | null = null;
  let closed = 0;
  const options = (): LineOptions => {
    if (!given) throw new Error('the line is not open');
    return given;
  };
  const line = {
    sampleRate,
    simulated: true,
    notes: [],
    unknown: [],
    play: () => undefined,
    setGain: () => undefined,
    close: () => {
      closed++;
    },
  };
  const rig: Rig = {
    ...fakeRig({}),
    open: (asked) => {
      given = asked;
      return Promise.resolve(line);
    },
  };
  const give = (frame: number, samples: readonly number[]): void => {
    const block: CapturedBlock = { frame, samples: Float32Array.from(samples), loopback: null };
    options().onBlock(block);
  };
  return { rig, give, options, closed: () => closed };
}

async function earOf(hand: Hand, signal = new AbortController().signal): Promise<Ear> {
  const ear = await openEar(hand.rig, { signal });
  if (isTrouble(ear)) throw new Error(ear.sentence);
  return ear;
}

afterEach(() => vi.useRealTimers());

describe('openEar', () => {
  it('cuts blocks into the stretches asked for, in order', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand);
    hand.give(0, [1, 2, 3]);
    const first = ear.hear(2);
    expect([...(await asSamples(first))]).toEqual([1, 2]);
    const second = ear.hear(4);
    hand.give(3, [4, 5]);
    hand.give(5, [6, 7]);
    expect([...(await asSamples(second))]).toEqual([3, 4, 5, 6]);
    expect([...(await asSamples(ear.hear(1)))]).toEqual([7]);
    ear.close();
  });

  it('starts a stretch over when audio was lost in it', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand);
    const stretch = ear.hear(3);
    hand.give(0, [1, 2]);
    hand.give(100, [3, 4]);
    hand.give(102, [5]);
    expect([...(await asSamples(stretch))]).toEqual([3, 4, 5]);
    ear.close();
  });

  it('hears silence where a sample is no number', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand);
    hand.give(0, [Number.NaN, Infinity, 0.5]);
    expect([...(await asSamples(ear.hear(3)))]).toEqual([0, 0, 0.5]);
    ear.close();
  });

  it('forgets what nobody asked for in ten seconds', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand);
    const block = Array.from({ length: 48_000 }, () => 0);
    for (let second = 0; second < 12; second++) {
      hand.give(48_000 * second, [...block.slice(1), second]);
    }
    const heard = await asSamples(ear.hear(48_000));
    expect(heard.at(-1)).toBe(2);
    ear.close();
  });

  it('gives the trouble of a line that ends, to those who wait and to those who ask later', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand);
    const gone = trouble('device-gone', 'Gone.');
    const waiting = ear.hear(10);
    hand.options().onEnd(gone);
    expect(await waiting).toEqual(gone);
    expect(await ear.hear(1)).toEqual(gone);
    ear.close();
  });

  it('closes the line when aborted', async () => {
    const hand = rigByHand();
    const stop = new AbortController();
    const ear = await earOf(hand, stop.signal);
    const waiting = ear.hear(10);
    stop.abort();
    expect(await waiting).toMatchObject({ trouble: 'stopped' });
    expect(hand.closed()).toBe(1);
  });

  it('closes the line at once when it was aborted before', async () => {
    const hand = rigByHand();
    const ear = await earOf(hand, AbortSignal.abort());
    expect(await ear.hear(10)).toMatchObject({ trouble: 'stopped' });
    expect(hand.closed()).toBe(1);
  });

  it('says so when no sound comes for eight seconds', async () => {
    vi.useFakeTimers();
    const hand = rigByHand();
    const ear = await earOf(hand);
    const waiting = ear.hear(10);
    hand.give(0, [1]);
    vi.advanceTimersByTime(8000);
    expect(await waiting).toMatchObject({ trouble: 'device-gone' });
    ear.close();
  });

  it('refuses rates that carry no 20 kHz', async () => {
    const hand = rigByHand(16_000);
    const { signal } = new AbortController();
    expect(await openEar(hand.rig, { signal })).toMatchObject({ trouble: 'wrong-rate' });
    expect(hand.closed()).toBe(1);
  });
});

async function asSamples(heard: ReturnType<Ear['hear']>): Promise<Float64Array> {
  const samples = await heard;
  if (isTrouble(samples)) throw new Error(samples.sentence);
  return samples;
}
