import { describe, expect, it } from 'vitest';
import { listDevices } from '../../src/rig/live/list-devices';
import { openMicrophone, type Microphone } from '../../src/rig/live/open-microphone';
import { isTrouble } from '../../src/trouble';

async function open(id: string | null): Promise<Microphone> {
  const microphone = await openMicrophone(id);
  if (isTrouble(microphone)) throw new Error(microphone.sentence);
  return microphone;
}

describe('the browser’s microphone', () => {
  it('is opened with all voice processing off, and says so when read back', async () => {
    const microphone = await open(null);
    expect(microphone.track.getSettings()).toMatchObject({
      echoCancellation: false,
      noiseSuppression: false,
      autoGainControl: false,
    });
    expect(microphone.unknown).toEqual([]);
    microphone.close();
    expect(microphone.track.readyState).toBe('ended');
  });

  it('has processing on unless asked: the reason to ask, and to read back', async () => {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
    const [track] = stream.getAudioTracks();
    expect(track?.getSettings()).toMatchObject({ echoCancellation: true, autoGainControl: true });
    track?.stop();
  });

  it('keeps its processing when asked to change it later: the reason to open it anew', async () => {
    const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
    const [track] = stream.getAudioTracks();
    await track?.applyConstraints({ autoGainControl: false }).catch(() => undefined);
    expect(track?.getSettings().autoGainControl).toBe(true);
    track?.stop();
  });

  it('is a real device, never the alias that follows the system', async () => {
    const { microphones } = await listDevices();
    expect(microphones.length).toBeGreaterThan(0);
    expect(microphones.map((device) => device.id)).not.toContain('default');
    const [first] = microphones;
    const microphone = await open(first?.id ?? null);
    expect(microphone.track.getSettings().deviceId).toBe(first?.id);
    expect(microphone.label).toBe(first?.name);
    microphone.close();
  });

  it('that is not there any more is named so', async () => {
    expect(await openMicrophone('gone')).toMatchObject({ trouble: 'no-microphone' });
  });
});
