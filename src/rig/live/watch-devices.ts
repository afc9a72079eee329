import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../../trouble';
import { mediaDevices, plainName, watchDeviceList } from './list-devices';
import { microphonePermission } from './microphone-permission';
import type { TakeEnding } from './take-ending';

/**
 * Ends the take when its microphone is unplugged, muted by the system, not allowed any more or
 * moved to another rate, or when any audio device comes or goes.
 */
export async function watchDevices(ending: TakeEnding, track: MediaStreamTrack): Promise<void> {
  const gone = (): void => {
    const sentence = msg(
      str`The microphone “${plainName(track.label)}” went away. Plug it in again, then start again.`,
    );
    ending.end(trouble('device-gone', sentence));
  };
  track.addEventListener('ended', gone);
  ending.atEnd(() => track.removeEventListener('ended', gone));
  const muted = (): void => {
    const sentence = msg(
      str`The system muted the microphone “${plainName(track.label)}”. Unmute it in the system's sound settings, then start again.`,
    );
    ending.end(trouble('device-gone', sentence));
  };
  track.addEventListener('mute', muted);
  ending.atEnd(() => track.removeEventListener('mute', muted));
  await watchPermission(ending);
  const rateBefore = track.getSettings().sampleRate;

  const media = mediaDevices();
  if (!media) return;
  const before = await audioDevices(media);
  const compare = async (): Promise<void> => {
    const rate = track.getSettings().sampleRate;
    if (rate !== rateBefore) return ending.end(rateChanged(track, rateBefore, rate));
    if ((await audioDevices(media)) === before || track.readyState === 'ended') return;
    const sentence = msg(
      'An audio device came or went, and the sound may have moved with it. Check the microphone and the output, then start again.',
    );
    ending.end(trouble('device-gone', sentence));
  };
  ending.atEnd(watchDeviceList(() => void compare()));
}

async function audioDevices(media: MediaDevices): Promise<string> {
  const devices = await media.enumerateDevices();
  const audio = devices.filter((device) => device.kind !== 'videoinput');
  return audio.map(({ kind, deviceId, label }) => `${kind} ${deviceId} ${label}`).join('\n');
}

/** Browsers that do not tell of the permission end the track instead. */
async function watchPermission(ending: TakeEnding): Promise<void> {
  const permission = await microphonePermission();
  if (!permission) return;
  const changed = (): void => {
    if (permission.state === 'granted') return;
    const sentence = msg(
      'The microphone is not allowed any more. Allow it for this page in the browser’s address bar, then start again.',
    );
    ending.end(trouble('no-permission', sentence));
  };
  permission.addEventListener('change', changed);
  ending.atEnd(() => permission.removeEventListener('change', changed));
}

function rateChanged(
  track: MediaStreamTrack,
  before: number | undefined,
  now: number | undefined,
): Trouble {
  return trouble(
    'rate-changed',
    msg(
      str`The microphone “${plainName(track.label)}” changed its rate from ${before ?? msg('an unknown one')} to ${now ?? msg('an unknown one')} Hz. Keep it at one rate in the system's sound settings, then start again.`,
    ),
  );
}
