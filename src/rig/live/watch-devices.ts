import { trouble } from '../../trouble';
import { mediaDevices } from './list-devices';
import type { TakeEnding } from './take-ending';

/** Chromium on Linux notices a lost device only when it is asked for the list. */
const lookSeconds = 2;

/** Ends the take when its microphone is unplugged or any audio device comes or goes. */
export async function watchDevices(ending: TakeEnding, track: MediaStreamTrack): Promise<void> {
  const gone = (): void => {
    const sentence = `The microphone “${track.label}” went away during the take. Plug it in again, then run the take again.`;
    ending.end(trouble('device-gone', sentence));
  };
  track.addEventListener('ended', gone);
  ending.atEnd(() => track.removeEventListener('ended', gone));

  const media = mediaDevices();
  if (!media) return;
  const before = await audioDevices(media);
  const compare = async (): Promise<void> => {
    if ((await audioDevices(media)) === before || track.readyState === 'ended') return;
    const sentence =
      'An audio device came or went during the take, and the sound may have moved with it. Check the microphone and the output, then run the take again.';
    ending.end(trouble('device-gone', sentence));
  };
  const changed = (): void => void compare();
  media.addEventListener('devicechange', changed);
  const looking = setInterval(changed, lookSeconds * 1000);
  ending.atEnd(() => {
    media.removeEventListener('devicechange', changed);
    clearInterval(looking);
  });
}

async function audioDevices(media: MediaDevices): Promise<string> {
  const devices = await media.enumerateDevices();
  const audio = devices.filter((device) => device.kind !== 'videoinput');
  return audio.map(({ kind, deviceId, label }) => `${kind} ${deviceId} ${label}`).join('\n');
}
