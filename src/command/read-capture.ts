import type { TakeCapture } from '../reading/ground-take';
import { captureFromWav } from '../rig/recording-capture';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { CommandIo } from './command';
import { inFile, readInputFile } from './input-files';

/** Channels of a recording, counted from 1. */
export interface CaptureChannels {
  /** Null: the only one there is. */
  readonly microphone: number | null;
  /** Null: there is none. */
  readonly loopback: number | null;
}

/** Microphone and loopback from the recording of a take; a Trouble names the file. */
export async function readCapture(
  path: string,
  schedule: Schedule,
  { microphone, loopback }: CaptureChannels,
  io: CommandIo,
): Promise<TakeCapture | Trouble> {
  if (loopback !== null && loopback === microphone) {
    return trouble(
      'wrong-channels',
      `Channel ${loopback} cannot be the microphone and the loopback. Give --capture-channel and --loopback-channel different numbers.`,
    );
  }
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const read = (channel: number | null) =>
    captureFromWav(file.bytes, schedule, {
      startedAt: file.writtenAt,
      ...(channel === null ? {} : { channel }),
    });
  const heard = read(microphone);
  if (isTrouble(heard)) return inFile(path, withOption(heard, 'capture-channel'));
  const wired = loopback === null ? null : read(loopback);
  if (isTrouble(wired)) return inFile(path, withOption(wired, 'loopback-channel'));
  const { samples, sampleRate } = heard;
  return { samples, sampleRate, loopback: wired?.samples ?? null };
}

function withOption(found: Trouble, option: string): Trouble {
  if (found.trouble !== 'wrong-channels') return found;
  return { ...found, sentence: `${found.sentence} The option is --${option} N.` };
}
