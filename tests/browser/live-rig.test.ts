import { describe, expect, it } from 'vitest';
import { liveRig } from '../../src/rig/live/live-rig';
import { layoutFromName } from '../../src/system/layout';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';

function scheduleOf(name: string, sampleRate = 48000) {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return scheduleTake(layout, { sampleRate, sweepSeconds: 0.5 });
}

/** A short take at the rate of this browser's output. */
async function shortTake() {
  const abilities = await liveRig().describe();
  if (isTrouble(abilities)) throw new Error(abilities.sentence);
  return scheduleOf('2.0', abilities.sampleRate);
}

describe('liveRig', () => {
  it('describes what the browser gives and names what it does not tell', async () => {
    const abilities = await liveRig().describe();
    expect(abilities).toMatchObject({ kind: 'live', simulated: false, inputs: 2 });
    expect(abilities).toHaveProperty('unknown', expect.arrayContaining(['latency']));
  });

  it('refuses more speakers than outputs and says how many', async () => {
    const { signal } = new AbortController();
    const capture = await liveRig().play(scheduleOf('7.1.4'), { signal });
    expect(capture).toMatchObject({
      trouble: 'no-output',
      sentence: expect.stringContaining('12 speakers') as string,
    });
  });

  it('refuses a take written for another rate than the output’s', async () => {
    const { signal } = new AbortController();
    const capture = await liveRig().play(scheduleOf('2.0', 96000), { signal });
    expect(capture).toMatchObject({ trouble: 'wrong-rate' });
  });

  it('does not begin when it is stopped already', async () => {
    const stop = new AbortController();
    stop.abort();
    const schedule = await shortTake();
    const never = await liveRig().play(schedule, { signal: stop.signal });
    expect(never).toMatchObject({ trouble: 'stopped' });
  });

  it('takes a gain that is no number for the caller’s mistake', async () => {
    const { signal } = new AbortController();
    const playing = liveRig().play(scheduleOf('2.0'), { signal, gainDb: Number.NaN });
    await expect(playing).rejects.toThrow(RangeError);
  });

  it('says that a chosen output is gone', async () => {
    const { signal } = new AbortController();
    const rig = liveRig({ output: { id: 'no such device', name: 'Gone' } });
    expect(await rig.play(scheduleOf('2.0'), { signal })).toMatchObject({ trouble: 'no-output' });
    expect(await rig.describe()).toMatchObject({ trouble: 'no-output' });
  });
});
