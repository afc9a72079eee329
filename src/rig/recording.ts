import { msg, str } from '@lit/localize';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { PlayProgress, Rig } from './port';
import { captureFromWav, type CaptureOptions } from './recording-capture';

/** Brings back the WAV of the take that something else played and recorded. */
export type BringRecording = (
  schedule: Schedule,
  signal: AbortSignal,
) => Promise<Uint8Array | Trouble>;

/**
 * The rig that plays nothing: the take is played and recorded elsewhere, and `play` waits until
 * `bring` has the recording. The take's files are those of takeFiles.
 */
export function recordingRig(bring: BringRecording, options: CaptureOptions): Rig {
  return {
    kind: 'recording',
    simulated: false,
    describe: () =>
      Promise.resolve({
        kind: 'recording',
        name: msg('Recording'),
        simulated: false,
        outputs: 0,
        inputs: 1,
        sampleRate: 48000,
        unknown: ['outputs', 'sampleRate'],
      }),
    async play(schedule, { signal, onProgress }) {
      if (signal.aborted) return stopped();
      const report = (phase: PlayProgress['phase'], progress: number): void => {
        const left = (1 - progress) * schedule.lengthSamples;
        onProgress?.({
          phase,
          progress,
          secondsLeft: left / schedule.sampleRate,
          position: schedule.lengthSamples - left,
        });
      };
      report('starting', 0);
      const bytes = await untilAborted(bringSafely(bring, schedule, signal), signal);
      if (signal.aborted) return stopped();
      if (isTrouble(bytes)) return bytes;
      report('finishing', 1);
      if (signal.aborted) return stopped();
      return captureFromWav(bytes, schedule, options);
    },
    open: () => Promise.resolve(noLine()),
    monitor: () => () => undefined,
  };
}

function noLine(): Trouble {
  return trouble(
    'no-output',
    msg(
      'A recording plays and hears nothing by itself: choose the live rig or the practice room for live noise, levels and listening.',
    ),
  );
}

function stopped(): Trouble {
  return trouble(
    'stopped',
    msg('Waiting for the recording was stopped. The saved take stays valid.'),
  );
}

async function bringSafely(
  bring: BringRecording,
  schedule: Schedule,
  signal: AbortSignal,
): Promise<Uint8Array | Trouble> {
  try {
    return await bring(schedule, signal);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return trouble(
      'failed',
      msg(str`The recording could not be brought back (${why}). Choose it again.`),
    );
  }
}

async function untilAborted<Value>(
  work: Promise<Value | Trouble>,
  signal: AbortSignal,
): Promise<Value | Trouble> {
  let stop = (): void => undefined;
  const aborted = new Promise<Trouble>((resolve) => {
    stop = () => resolve(stopped());
    signal.addEventListener('abort', stop);
  });
  try {
    return await Promise.race([work, aborted]);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}
