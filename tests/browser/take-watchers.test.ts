import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Output } from '../../src/rig/live/open-output';
import { createTakeEnding, watchPage, type TakeEnding } from '../../src/rig/live/take-ending';
import { watchDeviceList } from '../../src/rig/live/list-devices';
import { watchDevices } from '../../src/rig/live/watch-devices';
import { watchAnswers, watchClock } from '../../src/rig/live/watch-answers';
import { watchOutput } from '../../src/rig/live/watch-output';

/* What a world of plugs, permissions and servers does is said here by the browser's own events. */

let ending: TakeEnding = createTakeEnding();

afterEach(() => {
  ending.finish();
  vi.useRealTimers();
  vi.restoreAllMocks();
});

async function watchedTrack(): Promise<MediaStreamTrack> {
  ending = createTakeEnding();
  const stream = await navigator.mediaDevices.getUserMedia({ audio: true });
  const [track] = stream.getAudioTracks();
  if (!track) throw new Error('no track');
  ending.atEnd(() => track.stop());
  await watchDevices(ending, track);
  return track;
}

describe('what ends a take or a line', () => {
  it('is a microphone that was unplugged', async () => {
    (await watchedTrack()).dispatchEvent(new Event('ended'));
    expect(ending.reason).toMatchObject({ trouble: 'device-gone' });
    expect(ending.reason?.sentence).toContain('went away');
  });

  it('is a microphone that the system muted', async () => {
    (await watchedTrack()).dispatchEvent(new Event('mute'));
    expect(ending.reason?.sentence).toContain('muted');
  });

  it('is a permission taken back', async () => {
    const permission = Object.assign(new EventTarget(), { state: 'granted' });
    vi.spyOn(navigator.permissions, 'query').mockResolvedValue(permission as PermissionStatus);
    await watchedTrack();
    permission.dispatchEvent(new Event('change'));
    expect(ending.reason).toBeNull();
    permission.state = 'denied';
    permission.dispatchEvent(new Event('change'));
    expect(ending.reason).toMatchObject({ trouble: 'no-permission' });
  });

  it('is another rate of the microphone', async () => {
    const track = await watchedTrack();
    const settings = track.getSettings();
    vi.spyOn(track, 'getSettings').mockReturnValue({ ...settings, sampleRate: 16000 });
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    await expect.poll(() => ending.reason?.trouble).toBe('rate-changed');
    expect(ending.reason?.sentence).toContain('16000 Hz');
  });

  it('is a device that came, and no event about nothing new', async () => {
    await watchedTrack();
    const devices = await navigator.mediaDevices.enumerateDevices();
    const list = vi.spyOn(navigator.mediaDevices, 'enumerateDevices').mockResolvedValue(devices);
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    await expect.poll(() => list.mock.settledResults.length).toBeGreaterThan(0);
    expect(ending.reason).toBeNull();
    list.mockResolvedValue(devices.slice(1));
    navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
    await expect.poll(() => ending.reason?.trouble).toBe('device-gone');
  });

  it('is an output that fails, stops or has other channels', () => {
    vi.useFakeTimers();
    for (const how of ['fails', 'stops', 'changes'] as const) {
      ending = createTakeEnding();
      const destination = { maxChannelCount: 8 };
      const context = { state: 'running', destination, onstatechange: () => undefined as unknown };
      let fail = (): void => undefined;
      const native = { onFailure: (listener: () => void) => ((fail = listener), () => undefined) };
      watchOutput(ending, { context, native } as unknown as Output);
      vi.advanceTimersByTime(3000);
      expect(ending.reason).toBeNull();
      if (how === 'fails') fail();
      if (how === 'stops') Object.assign(context, { state: 'suspended' }).onstatechange();
      if (how === 'changes') destination.maxChannelCount = 2;
      vi.advanceTimersByTime(1500);
      expect(ending.reason?.sentence, how).toMatch(/audio output (stopped|changed from 8 to 2)/);
    }
  });

  it('is an audio clock that stands still, and not one that is heard of again in time', () => {
    vi.useFakeTimers();
    ending = createTakeEnding();
    const { alive } = watchClock(ending);
    for (let second = 0; second < 20; second += 4) {
      vi.advanceTimersByTime(4000);
      alive();
    }
    expect(ending.reason).toBeNull();
    // A page that was busy hears its overdue timer first and the messages that waited next.
    vi.advanceTimersByTime(5500);
    alive();
    vi.advanceTimersByTime(5500);
    expect(ending.reason).toBeNull();
    vi.advanceTimersByTime(1000);
    expect(ending.reason).toMatchObject({ trouble: 'no-output' });
    alive();
    expect(vi.getTimerCount()).toBe(0);
  });

  it('is a browser that does not answer, unless a person is asked', () => {
    vi.useFakeTimers();
    ending = createTakeEnding();
    const answers = watchAnswers(ending);
    answers.stop();
    vi.advanceTimersByTime(60_000);
    expect(ending.reason).toBeNull();
    answers.alive();
    vi.advanceTimersByTime(11_500);
    expect(ending.reason?.sentence).toContain('does not answer');
  });

  it('is a hidden page, and a stop', () => {
    ending = createTakeEnding();
    watchPage(ending, new AbortController().signal);
    vi.spyOn(document, 'visibilityState', 'get').mockReturnValue('hidden');
    document.dispatchEvent(new Event('visibilitychange'));
    expect(ending.reason).toMatchObject({ trouble: 'hidden' });
    vi.restoreAllMocks();
    ending = createTakeEnding();
    const stop = new AbortController();
    watchPage(ending, stop.signal);
    expect(ending.reason).toBeNull();
    stop.abort();
    expect(ending.reason).toMatchObject({ trouble: 'stopped' });
  });
});

describe('watchDeviceList', () => {
  it('tells of every change and looks by itself, until it is left', () => {
    vi.useFakeTimers();
    // The browser's own list tells of changes of its own now and then, so it does not take part.
    const media = new EventTarget();
    vi.spyOn(navigator, 'mediaDevices', 'get').mockReturnValue(media as MediaDevices);
    let calls = 0;
    const leave = watchDeviceList(() => calls++);
    media.dispatchEvent(new Event('devicechange'));
    expect(calls).toBe(1);
    vi.advanceTimersByTime(7000);
    expect(calls).toBe(4);
    leave();
    media.dispatchEvent(new Event('devicechange'));
    vi.advanceTimersByTime(7000);
    expect(calls).toBe(4);
    vi.restoreAllMocks();
  });
});
