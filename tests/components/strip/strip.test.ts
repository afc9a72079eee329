import { afterEach, describe, expect, it } from 'vitest';
import '../../../components/strip/strip';
import { secondsLeft, soundInWords } from '../../../components/strip/strip-words';
import type { Activity } from '../../../src/session/bench';
import { deepText, findDeep } from '../deep';
import { FakeBench } from '../fake-bench';
import { expectQuiet } from '../quiet';

expectQuiet();
afterEach(() => document.body.replaceChildren());

const playing: Activity = {
  kind: 'playing',
  channel: 'FC',
  part: { number: 1, of: 1 },
  play: { phase: 'playing', progress: 0.5, secondsLeft: 32.2, position: 100 },
};

async function strip(bench: FakeBench): Promise<HTMLElement> {
  const element = document.createElement('ll-strip');
  element.bench = bench;
  document.body.append(element);
  await element.updateComplete;
  return element;
}

describe('the strip', () => {
  it('says when nothing plays', async () => {
    expect(deepText(await strip(new FakeBench()))).toContain('Nothing is playing');
  });

  it('says what plays, that it is simulated, and for how long', async () => {
    const text = deepText(await strip(new FakeBench('5.1', { activity: playing })));
    expect(text).toContain('Playing FC, simulated');
    expect(text).toMatch(/33\ss left/);
  });

  it('does not call a live take simulated', () => {
    const bench = new FakeBench('5.1', { activity: playing });
    bench.setRig('live');
    expect(soundInWords(bench.state)).toBe('Playing FC');
  });

  it('shows the level of the microphone, and clipping as such', async () => {
    const bench = new FakeBench('5.1', { mic: { rmsDb: -23.42, peakDb: -11, clipped: false } });
    const element = await strip(bench);
    expect(deepText(element)).toMatch(/−23\.4\sdBFS/);
    bench.set({ mic: { rmsDb: -3, peakDb: 0, clipped: true } });
    await expect.poll(() => deepText(element)).toContain('clipped');
  });

  it('keeps the bar inside its track for levels below its floor and for silence', async () => {
    const mic = { rmsDb: -Infinity, peakDb: -200, clipped: false };
    const element = await strip(new FakeBench('5.1', { mic }));
    const bar = findDeep(element, '.mean');
    expect(bar.getAttribute('width')).toBe('0');
    expect(deepText(element)).not.toMatch(/NaN|Infinity/);
  });

  it('has no time left when nobody can tell', () => {
    const activity: Activity = { kind: 'reading', progress: 0, secondsLeft: null, channels: [] };
    expect(secondsLeft(new FakeBench('5.1', { activity }).state)).toBeNull();
  });

  it('says when the session could not be saved', async () => {
    expect(deepText(await strip(new FakeBench('5.1', { saved: 'failed' })))).toContain('Not saved');
  });

  const climb = {
    gainDb: -36,
    marginDb: 17.2,
    soundLevel: null,
    progress: 0.4,
    secondsLeft: 14,
  };
  const noise = {
    request: {
      kind: 'noise',
      channel: 'SiL',
      lowHz: 20,
      highHz: 20_000,
      gainDb: -30,
      bandsPerOctave: 3,
      averagingSeconds: 15,
    },
    seconds: 6,
    secondsLeft: 9,
    complete: false,
    spectrum: null,
    bandLevelDb: null,
    soundLevel: null,
    reading: null,
    warnings: [],
  } as const;

  it('says what waits, what sounds and what only listens', () => {
    const said = (activity: Activity) => {
      const bench = new FakeBench('5.1', { activity });
      bench.setRig('live');
      return soundInWords(bench.state);
    };
    expect(said({ kind: 'waiting', prompt: { title: 'Move', steps: [] } })).toBe('Waiting for you');
    expect(said({ kind: 'noise', noise })).toBe('Pink noise on SiL');
    const listening = { ...noise, request: { ...noise.request, kind: 'listening' as const } };
    expect(said({ kind: 'noise', noise: listening })).toBe(
      'Listening to SiL, nothing is played from here',
    );
    expect(said({ kind: 'climbing', climb })).toBe('Climbing to a test level');
  });

  it('lights its Stop while anything may sound: a take, noise, a climb', async () => {
    const lit = async (activity: Activity) => {
      const element = await strip(new FakeBench('5.1', { activity }));
      return findDeep(element, '.stop').classList.contains('sounding');
    };
    expect(await lit(playing)).toBe(true);
    expect(await lit({ kind: 'noise', noise })).toBe(true);
    expect(await lit({ kind: 'climbing', climb })).toBe(true);
    expect(await lit({ kind: 'waiting', prompt: { title: 'Move', steps: [] } })).toBe(false);
    const listening = { ...noise, request: { ...noise.request, kind: 'listening' as const } };
    expect(await lit({ kind: 'noise', noise: listening })).toBe(false);
  });

  it('counts the takes, and tells the time and the margin left of a climb', async () => {
    const activity: Activity = { ...playing, part: { number: 2, of: 3 } };
    expect(deepText(await strip(new FakeBench('5.1', { activity })))).toContain('take 2 of 3');
    const climbing = deepText(
      await strip(new FakeBench('5.1', { activity: { kind: 'climbing', climb } })),
    );
    expect(climbing).toMatch(/14\ss left 17\sdB over the noise/);
  });

  it('has no time left once the average of the noise is complete', () => {
    const time = (complete: boolean) =>
      secondsLeft(
        new FakeBench('5.1', { activity: { kind: 'noise', noise: { ...noise, complete } } }).state,
      );
    expect([time(false), time(true)]).toEqual([9, null]);
  });

  it('shows the sound level once calibrated, and changes its weighting on demand', async () => {
    const soundLevel = { weighting: 'A', time: 'slow', db: 71.24, calibrated: true } as const;
    const bench = new FakeBench('5.1', { activity: playing, soundLevel });
    const element = await strip(bench);
    await expect.poll(() => deepText(element)).toMatch(/71\.2\sdB\(A\)/);
    const choose = (name: string, value: string) => {
      const select = findDeep(element, `select[aria-label^=${name}]`) as HTMLSelectElement;
      select.value = value;
      select.dispatchEvent(new Event('change'));
    };
    choose('Frequency', 'C');
    choose('Time', 'fast');
    expect(bench.calls).toEqual(['setMeter C slow', 'setMeter A fast']);
    bench.set({ soundLevel: { ...soundLevel, db: -60, calibrated: false } });
    await expect.poll(() => deepText(element)).not.toContain('dB(A)');
  });

  it('holds the highest peak of the microphone', async () => {
    const mic = { rmsDb: -40, peakDb: -18, clipped: false };
    const bench = new FakeBench('5.1', { mic });
    const element = await strip(bench);
    const place = () => findDeep(element, '.peak').getAttribute('x');
    const before = place();
    bench.set({ mic: { rmsDb: -41, peakDb: -36, clipped: false } });
    await expect.poll(() => deepText(element)).toMatch(/−41\.0\sdBFS/);
    expect(place()).toBe(before);
  });
});
