import { captureSample, type Clock, type ClockStep } from '../../dsp/timing/clock';
import { amplitudeToDb } from '../../dsp/level/decibels';
import type { ChannelLabel } from '../system/channel';
import type { Schedule } from '../take/schedule';
import { stepFault } from './clock-reading';
import type { CapturedAudio } from './match-clock';
import type { Fault } from './reading';

/** What is wrong with one segment; `spoilt` says why no number of it can be trusted. */
export interface SegmentCheck {
  readonly faults: readonly Fault[];
  readonly spoilt: string | null;
}

export interface CaptureCheck {
  readonly segments: readonly SegmentCheck[];
  readonly clipped: readonly ChannelLabel[];
  readonly noiseFloorDb: number;
  readonly peakDb: number;
  readonly placeOf: (step: ClockStep) => number | null;
}

/** Checks the capture before anything is read from it: clipping, noise floor, lost audio. */
export function checkCapture(
  capture: CapturedAudio,
  clock: Clock,
  schedule: Schedule,
): CaptureCheck {
  const segments = schedule.segments.map((_, index) => checkSegment(capture, clock, index));
  return {
    segments,
    clipped: schedule.segments
      .filter((_, index) => segments[index]?.faults.some(({ kind }) => kind === 'clipped'))
      .map(({ channel }) => channel),
    noiseFloorDb: noiseFloor(capture, clock, schedule),
    peakDb: amplitudeToDb(capture.samples.reduce((most, one) => Math.max(most, Math.abs(one)), 0)),
    placeOf: () => null,
  };
}

function checkSegment(capture: CapturedAudio, clock: Clock, index: number): SegmentCheck {
  const faults: Fault[] = [];
  let spoilt: string | null = null;
  for (const step of clock.steps) {
    if (index < step.interval || index > step.lastInterval) continue;
    faults.push(stepFault(step, capture.sampleRate));
    spoilt = 'Audio was lost or repeated inside this segment: repeat it.';
  }
  if (clock.segments[index]?.standing === 'doubtful') {
    spoilt ??= `The mark that opens this segment was not heard, and audio may be missing before it: repeat it.`;
  }
  return { faults, spoilt };
}

function noiseFloor({ samples }: CapturedAudio, clock: Clock, schedule: Schedule): number {
  const { start, length } = schedule.silence;
  const margin = 0.02 * schedule.sampleRate;
  const from = Math.max(0, Math.round(captureSample(clock, 0, start + margin)));
  const to = Math.round(captureSample(clock, 0, start + length - margin));
  if (to - from < schedule.sampleRate / 10) return -200;
  let sum = 0;
  for (let n = from; n < to; n++) sum += (samples[n] ?? 0) ** 2;
  return amplitudeToDb(Math.sqrt(sum / (to - from)));
}
