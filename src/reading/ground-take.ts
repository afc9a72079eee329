import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { MarkBand } from '../../dsp/timing/mark-band';
import { markGains } from '../../dsp/timing/mark-gains';
import { scanCapture, type CaptureScan } from '../../dsp/timing/scan-capture';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { Layout } from '../system/channel';
import { layoutFromName } from '../system/layout';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkCapture, type CaptureCheck } from './check-capture';
import { checkGains } from './check-gains';
import type { CapturedAudio } from './match-clock';
import type { TakeGround } from './read-one';
import { newSharedSound } from './shared-sound';
import { takeClock, type TakeClock } from './take-clock';

/** Microphone audio of a take, mono, and on the same frames the electrical loopback if there is one. */
export interface TakeCapture {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly loopback?: Float32Array | null;
}

/** A capture that is this take's, with its clock and what is wrong with it. */
export interface GroundedTake {
  readonly layout: Layout;
  readonly audio: CapturedAudio;
  readonly timed: TakeClock;
  readonly checks: CaptureCheck;
  /** What its channels are gathered with; checks of gain included. */
  readonly ground: TakeGround;
}

/**
 * Finds the clock of a capture and checks it, before any channel is gathered. A Trouble when it
 * cannot be this take; what is wrong with single segments is marked in them. `band`: the capture's,
 * where it was made already.
 */
export function groundTake(
  schedule: Schedule,
  capture: TakeCapture,
  calibration: MicrophoneCalibration | null,
  band?: MarkBand,
): GroundedTake | Trouble {
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) return layout;
  const { samples, sampleRate } = capture;
  const audio = { samples, sampleRate };
  const scan = scanCapture(samples);
  const bad = refuseCapture(audio, schedule, scan);
  if (bad) return bad;
  const timed = takeClock({ ...audio, ...(band && { band }) }, loopbackOf(capture), schedule);
  if (isTrouble(timed)) return timed;
  const { clock } = timed;
  const checks = checkCapture(audio, clock, schedule, scan);
  const mark = { ...schedule.mark, sampleRate: schedule.sampleRate };
  const gains = timed.heard ? markGains(audio.samples, timed.heard, mark) : [];
  const segmentChecks = checkGains(checks.segments, gains, schedule);
  const shared = newSharedSound();
  const ground = { schedule, clock, checks: segmentChecks, calibration, shared };
  return { layout, audio, timed, checks, ground };
}

/** What is no number in it counts as silence. */
function loopbackOf({ loopback, sampleRate }: TakeCapture): CapturedAudio | null {
  if (!loopback) return null;
  const samples = loopback.map((value) => (Number.isFinite(value) ? value : 0));
  return { samples, sampleRate };
}

function refuseCapture(
  { samples, sampleRate }: CapturedAudio,
  schedule: Schedule,
  { notNumber: bad, peak }: CaptureScan,
): Trouble | null {
  if (bad >= 0) {
    return trouble(
      'not-a-number',
      msg(
        str`The capture is damaged: sample ${bad} (${withUnit(numberText(bad / sampleRate, 3), 's')}) is no number. Export the recording again.`,
      ),
    );
  }
  if (peak === 0) {
    return trouble(
      'silence',
      msg(
        'The capture is silent from start to end. Check the microphone, its input and its level, then run the take again.',
      ),
    );
  }
  const seconds = samples.length / sampleRate;
  const first = schedule.segments[0]?.markStart ?? 0;
  const last = schedule.markStarts.at(-1) ?? 0;
  const needed = (last - first + schedule.mark.lengthSamples) / schedule.sampleRate;
  if (seconds >= needed * 0.999) return null;
  return trouble(
    'too-short',
    msg(
      str`The capture lasts ${withUnit(numberText(seconds, 1), 's')} and is shorter than the take, which needs ${withUnit(numberText(needed, 1), 's')} from its first mark to its last. Record until the take has ended.`,
    ),
  );
}
