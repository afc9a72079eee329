import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { listDevices, mediaDevices, plainName } from './list-devices';
import { judgeMicrophone, type MicrophoneFacts } from './microphone-settings';

/** An open microphone. Keep it referenced: a stream nobody holds is collected and falls silent. */
export interface Microphone extends MicrophoneFacts {
  readonly label: string;
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
  close(): void;
}

/**
 * Opens the microphone with this id (null: the system's choice, pinned to the real device) with
 * all voice processing off, and reads back what was given.
 */
export async function openMicrophone(id: string | null): Promise<Microphone | Trouble> {
  const media = mediaDevices();
  if (!media) {
    return trouble(
      'no-permission',
      msg(
        'This page may not use a microphone because it did not come over https or from this machine. Open it by its https address or from localhost.',
      ),
    );
  }
  try {
    const opened = await media.getUserMedia(constraintsFor(id));
    const pinned = id === null ? await pinDefault(media, opened) : opened;
    return heldMicrophone(pinned);
  } catch (error) {
    return explainRefusal(error);
  }
}

/** The trouble behind an error of getUserMedia, by its standard name. */
export function explainRefusal(error: unknown): Trouble {
  const name = error instanceof Error ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return trouble(
        'no-permission',
        msg(
          'The microphone was not allowed. Allow it for this page in the browser’s address bar, then start again.',
        ),
      );
    case 'NotFoundError':
      return trouble(
        'no-microphone',
        msg(
          'No microphone was found. Plug one in or, if one is plugged in, close and reopen the browser, then start again.',
        ),
      );
    case 'OverconstrainedError':
      return trouble(
        'no-microphone',
        msg(
          'The chosen microphone is not there any more. Plug it in or choose another, then start again.',
        ),
      );
    case 'NotReadableError':
    case 'AbortError':
      return trouble(
        'no-microphone',
        msg(
          'The microphone could not be opened; another program may hold it. Close that program or plug the microphone in again, then start again.',
        ),
      );
    default:
      return trouble(
        'failed',
        msg(
          str`The microphone could not be opened (${error instanceof Error ? error.message : String(error)}). Plug it in again, then start again.`,
        ),
      );
  }
}

function constraintsFor(id: string | null): MediaStreamConstraints {
  return {
    audio: {
      ...(id === null ? {} : { deviceId: { exact: id } }),
      echoCancellation: false,
      noiseSuppression: false,
      autoGainControl: false,
      channelCount: 2,
    },
  };
}

/**
 * 'default' follows the system, even during a take. Processing is set only when a stream opens, so
 * the real device is opened anew.
 */
async function pinDefault(media: MediaDevices, stream: MediaStream): Promise<MediaStream> {
  const track = stream.getAudioTracks()[0];
  if (!track || track.getSettings().deviceId !== 'default') return stream;
  const { microphones } = await listDevices();
  const named = microphones.filter(({ name }) => name !== '' && track.label.endsWith(name));
  const real = named.length > 0 ? named : microphones;
  const [only] = real;
  if (real.length !== 1 || !only) return stream;
  closeStream(stream);
  return media.getUserMedia(constraintsFor(only.id));
}

function heldMicrophone(stream: MediaStream): Microphone | Trouble {
  const close = (): void => closeStream(stream);
  const track = stream.getAudioTracks()[0];
  if (!track) return explainRefusal(new DOMException(msg('no track'), 'NotFoundError'));
  const facts = judgeMicrophone(plainName(track.label), { ...track.getSettings() });
  if (isTrouble(facts)) {
    close();
    return facts;
  }
  return { ...facts, label: plainName(track.label), stream, track, close };
}

function closeStream(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
