import { AudioContext } from 'standardized-audio-context';
import { afterEach, describe, expect, it } from 'vitest';
import { canChooseOutput, nativeAbilities } from '../../src/rig/live/native-context';

let open: AudioContext | null = null;

function openContext(): AudioContext {
  return (open = new AudioContext({ latencyHint: 'playback' }));
}

afterEach(async () => {
  await open?.close();
  open = null;
});

describe('what the audio library lacks of an AudioContext', () => {
  it('is still missing there: the day one is found here, native-context.ts can shrink', () => {
    const context = openContext();
    for (const name of ['setSinkId', 'playbackStats', 'onerror']) {
      expect(name in context, name).toBe(false);
    }
  });

  it('is reached behind it: the output by its id, and the count of underruns', async () => {
    const native = nativeAbilities(openContext());
    expect(canChooseOutput()).toBe(true);
    expect(await native.setOutput('')).toBe(true);
    await expect(native.setOutput('no such device')).rejects.toThrow();
    expect(native.underruns()).toEqual({
      count: expect.any(Number) as number,
      seconds: expect.any(Number) as number,
    });
  });

  it('is answered with “cannot” where a browser has none of it', async () => {
    const context = openContext();
    const bare = Object.create(context, { _nativeAudioContext: { value: null } }) as AudioContext;
    const native = nativeAbilities(bare);
    expect(await native.setOutput('')).toBe(false);
    expect(native.underruns()).toBeNull();
    expect(() => native.onFailure(() => undefined)()).not.toThrow();
  });
});
