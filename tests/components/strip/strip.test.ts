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
});
