import type { Schedule } from '../../take/schedule';
import type { MicLevel, PlayOptions, PlayProgress } from '../port';
import { assembleCapture, type AssembledCapture } from './assemble-capture';
import type { CaptureChunk, CaptureMessage } from './capture-message';
import { levelOf } from './level-of';

/** Keeps what the capture sends and tells how far the take is. */
export interface Recorder {
  listen(message: CaptureMessage): void;
  /** Names the frame at which the stimulus starts; kept from there on. */
  keepFrom(startFrame: number): void;
  /** Resolves when all frames to keep have passed. */
  readonly complete: Promise<void>;
  /** Frames kept so far, gaps counted. */
  heardFrames(): number;
  /** All that was kept; as long as what was asked for, or as what was heard when it ended early. */
  assemble(): AssembledCapture;
}

/**
 * A recorder that keeps one schedule and `tailSeconds` more. `leadSeconds` pass before it starts,
 * for the time left. Progress follows the messages of the audio clock.
 */
export function createRecorder(
  schedule: Pick<Schedule, 'lengthSamples' | 'sampleRate'>,
  leadSeconds: number,
  tailSeconds: number,
  options: Pick<PlayOptions, 'onProgress'>,
  onLevel: (level: MicLevel) => void,
): Recorder {
  const { lengthSamples: stimulusFrames, sampleRate } = schedule;
  const keepFrames = stimulusFrames + Math.round(tailSeconds * sampleRate);
  const chunks: CaptureChunk[] = [];
  let startFrame: number | null = null;
  let firstFrame: number | null = null;
  let finish: () => void = () => undefined;
  const complete = new Promise<void>((resolve) => (finish = resolve));

  let heard = 0;
  const progressAt = (frame: number): PlayProgress => {
    firstFrame ??= frame;
    const position = startFrame === null ? 0 : Math.max(0, frame - startFrame);
    const waited = (frame - firstFrame) / sampleRate;
    const before = startFrame === null ? leadSeconds - waited : (startFrame - frame) / sampleRate;
    const after = (keepFrames - position) / sampleRate;
    const phase = position >= stimulusFrames ? 'finishing' : position > 0 ? 'playing' : 'settling';
    return {
      phase,
      progress: Math.min(1, position / stimulusFrames),
      secondsLeft: Math.max(0, before) + Math.max(0, after),
      position: Math.min(position, stimulusFrames),
    };
  };

  return {
    complete,
    listen(message) {
      if (message.kind === 'level') {
        onLevel(levelOf(message));
        options.onProgress?.(progressAt(message.frame));
        return;
      }
      if (startFrame === null) return;
      const length = message.channels[0]?.length ?? 0;
      if (message.frame + length > startFrame) chunks.push(message);
      heard = Math.max(0, Math.min(keepFrames, message.frame + length - startFrame));
      if (message.frame + length >= startFrame + keepFrames) finish();
    },
    keepFrom(frame) {
      startFrame = frame;
    },
    heardFrames: () => heard,
    assemble: () => assembleCapture(chunks, startFrame ?? 0, heard),
  };
}
