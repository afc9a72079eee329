import { describe, expect, it } from 'vitest';
import { recordingRig } from '../../../src/rig/recording';
import { renderChannel } from '../../../src/take/render';
import { isTrouble, trouble } from '../../../src/trouble';
import { writeWav } from '../../../src/wav/write-wav';
import { rigContract } from './contract';
import { shortTake } from './short-take';

const startedAt = '2030-01-02T03:04:05.000Z';

function recordingOf(seconds: number): Uint8Array {
  const samples = renderChannel(shortTake, shortTake.reference).subarray(0, seconds * 48000);
  return writeWav({ channels: [samples], sampleRate: 48000, depth: 24, channelMask: 4 });
}

rigContract('recording, brought back whole', () =>
  Promise.resolve({
    rig: recordingRig(() => Promise.resolve(recordingOf(60)), { startedAt }),
    schedule: shortTake,
    gives: 'capture' as const,
    opens: 'sentence' as const,
  }),
);

rigContract('recording, cut off', () =>
  Promise.resolve({
    rig: recordingRig(() => Promise.resolve(recordingOf(3)), { startedAt }),
    schedule: shortTake,
    gives: 'trouble' as const,
    opens: 'sentence' as const,
  }),
);

rigContract('recording, whose file cannot be opened', () =>
  Promise.resolve({
    rig: recordingRig(() => Promise.reject(new Error('no such file')), { startedAt }),
    schedule: shortTake,
    gives: 'trouble' as const,
    opens: 'sentence' as const,
  }),
);

describe('recordingRig', () => {
  it('stops waiting at once when it is stopped, even if the recording never comes', async () => {
    const abort = new AbortController();
    const rig = recordingRig(() => new Promise(() => undefined), { startedAt });
    const playing = rig.play(shortTake, { signal: abort.signal });
    abort.abort();
    expect(await playing).toMatchObject({ trouble: 'stopped' });
  });

  it('hands on the trouble of whoever brings the recording', async () => {
    const gone = trouble('bad-file', 'The memory card was pulled out.');
    const rig = recordingRig(() => Promise.resolve(gone), { startedAt });
    const result = await rig.play(shortTake, { signal: new AbortController().signal });
    expect(result).toEqual(gone);
  });

  it('says why the recording could not be opened', async () => {
    const rig = recordingRig(() => Promise.reject(new Error('card unreadable')), { startedAt });
    const result = await rig.play(shortTake, { signal: new AbortController().signal });
    expect(isTrouble(result) && result.sentence).toMatch(/card unreadable/);
  });
});
