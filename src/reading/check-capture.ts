import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { amplitudeToDb, dbToAmplitude } from '../../dsp/level/decibels';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import { blockPeaks } from '../../dsp/timing/block-peaks';
import { findBlurredCeiling } from '../../dsp/timing/blurred-ceiling';
import { findClipping } from '../../dsp/timing/clipping';
import { findDropouts, type Dropout } from '../../dsp/timing/dropouts';
import { locateFault, type FaultPlace } from '../../dsp/timing/locate-fault';
import { measureNoise } from '../../dsp/timing/noise';
import { scanCapture } from '../../dsp/timing/scan-capture';
import type { ChannelLabel } from '../system/channel';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule, ScheduledSegment } from '../take/schedule';
import { stepFault } from './clock-reading';
import type { CapturedAudio } from './match-clock';
import type { Fault } from './reading';
import type { Samples } from '../../dsp/signal/samples';

/** What is wrong with one segment; `spoilt` says why no number of it can be trusted. */
export interface SegmentCheck {
  readonly faults: readonly Fault[];
  readonly spoilt: string | null;
  /** Where lost audio is put back before reading; null when there is nothing to mend. */
  readonly mend: FaultPlace | null;
}

export interface CaptureCheck {
  readonly segments: readonly SegmentCheck[];
  readonly clipped: readonly ChannelLabel[];
  /** Rms of the take's silence, dB re full scale; of the quietest part when it is not there. */
  readonly noiseFloorDb: number;
  readonly peakDb: number;
}

/** How long a sweep is still heard after its end, seconds. */
const ringSeconds = 0.3;
/** A gap of exact zeros is whole buffers; shorter ones are zero crossings of quiet bass. */
const leastGap = 120;
/** Sound beside a gap, rms, and in steps of the converter: quieter sound may cross zero so long. */
const leastSound = 2.5e-4;
const leastSteps = 12;
const besideGap = 256;

/** Checks the capture before anything is read from it: clipping, noise floor, lost audio. */
export function checkCapture(
  capture: CapturedAudio,
  clock: Clock,
  schedule: Schedule,
  { step, peak } = scanCapture(capture.samples),
): CaptureCheck {
  const noiseFloorDb = noiseFloor(capture, clock, schedule);
  const leastBeside = Math.max(leastSound, leastSteps * step);
  const noiseRms = dbToAmplitude(noiseFloorDb);
  const ground = { ...capture, clock, schedule, noiseRms, step, leastBeside };
  const segments = schedule.segments.map((segment) => checkSegment(ground, segment));
  return {
    segments,
    clipped: schedule.channels.filter((label) =>
      segments.some(
        ({ faults }, index) =>
          schedule.segments[index]?.channel === label &&
          faults.some(({ kind }) => kind === 'clipped'),
      ),
    ),
    noiseFloorDb,
    peakDb: amplitudeToDb(peak),
  };
}

/** What all segments of a capture are checked against. */
interface Ground extends CapturedAudio {
  readonly clock: Clock;
  readonly schedule: Schedule;
  readonly noiseRms: number;
  /** Of the converter, as far as it shows. */
  readonly step: number;
  /** Rms that sound beside a gap in a sweep must have. */
  readonly leastBeside: number;
}

function checkSegment(ground: Ground, segment: ScheduledSegment): SegmentCheck {
  const { samples, sampleRate, clock, schedule, noiseRms, leastBeside } = ground;
  const index = intervalOf(schedule, segment);
  const faults: Fault[] = [];
  let spoilt: string | null = null;
  const steps = clock.steps.filter((one) => index >= one.interval && index <= one.lastInterval);
  const sweep = { ...segment.sweep, sampleRate: schedule.sampleRate };
  const alone = bundleOf(schedule, segment).length === 1;
  const mend =
    steps.length === 1 && alone
      ? locateFault(samples, clock, index, sweep, segment.sweepStart)
      : null;
  for (const step of steps) faults.push(stepFault(step, sampleRate, mend));
  if (steps.length > 0 && !mend) {
    spoilt = msg('Audio was lost or repeated somewhere inside this segment: repeat it.');
  }
  if (clock.segments[index]?.standing === 'doubtful') {
    spoilt ??= msg(
      'The mark that opens this segment was not heard, and audio may be missing before it: repeat it.',
    );
  }
  const last = segment.sweepStart + segment.sweep.lengthSamples + ringSeconds * schedule.sampleRate;
  const place = (at: number): number =>
    Math.min(Math.max(Math.round(captureSample(clock, index, at)), 0), samples.length);
  const [from, to] = [place(segment.sweepStart), place(Math.min(last, segment.end))];
  const gap = findGap(samples, from, to, leastBeside);
  if (gap) {
    const sentence = msg(
      str`The recorder put nothing for ${gap.length} samples at ${withUnit(numberText(gap.from / sampleRate, 2), 's')}. Repeat this segment.`,
    );
    faults.push({ kind: 'lost', sentence });
    spoilt ??= msg('Audio is missing inside this segment: repeat it.');
  }
  const around = schedule.markStarts[index + 1] ?? segment.end;
  const starved = findStarved(ground, place(segment.markStart), place(around));
  if (!gap && starved) {
    const sentence = msg(
      str`The recorder put nothing for ${starved.length} samples at ${withUnit(numberText(starved.from / sampleRate, 2), 's')}, beside the sweep: its time cannot be trusted. Repeat this segment.`,
    );
    faults.push({ kind: 'lost', sentence });
    spoilt ??= msg('Audio is missing beside this sweep: repeat it.');
  }
  const peaks = blockPeaks(samples, from, to);
  const clipping = findClipping(samples, from, to, peaks);
  const ceiling = clipping?.ceiling ?? findBlurredCeiling(samples, from, to, noiseRms, peaks);
  if (ceiling !== null) faults.push(clippedFault(ceiling));
  return { faults, spoilt, mend };
}

function clippedFault(ceiling: number): Fault {
  const sentence = msg(
    str`Clipped at ${withUnit(numberText(amplitudeToDb(ceiling), 1), 'dBFS')}. Level and response are not to be trusted; lower the microphone's gain or the level and repeat it.`,
  );
  return { kind: 'clipped', sentence };
}

/**
 * Whole buffers of exact zeros beside a sweep. The marks do not show them when as much was left out
 * again before the next one, yet the sweep between stands in the wrong place. Only where the noise
 * is more than a step of the converter, so that silence is never all zeros.
 */
function findStarved({ samples, noiseRms, step }: Ground, from: number, to: number) {
  if (noiseRms < step) return null;
  return findDropouts(samples, from, to).find(({ length }) => length >= leastGap) ?? null;
}

function findGap(samples: Samples, from: number, to: number, leastBeside: number): Dropout | null {
  const beside = (start: number): number => {
    const [first, end] = [Math.max(0, start), Math.min(samples.length, start + besideGap)];
    return end > first ? dbToAmplitude(measureNoise(samples, first, end)) : 0;
  };
  const gaps = findDropouts(samples, from, to).filter(
    (gap) =>
      gap.length >= leastGap &&
      Math.min(beside(gap.from - besideGap), beside(gap.from + gap.length)) > leastBeside,
  );
  return gaps[0] ?? null;
}

function noiseFloor({ samples, sampleRate }: CapturedAudio, clock: Clock, schedule: Schedule) {
  const { start, length } = schedule.silence;
  const margin = 0.02 * schedule.sampleRate;
  const from = Math.max(0, Math.round(captureSample(clock, 0, start + margin)));
  const to = Math.round(captureSample(clock, 0, start + length - margin));
  if (to - from >= sampleRate / 4) return measureNoise(samples, from, to);
  const block = Math.round(sampleRate / 4);
  let quietest = 0;
  for (let at = 0; at + block <= samples.length; at += block) {
    quietest = Math.min(quietest, measureNoise(samples, at, at + block));
  }
  return quietest;
}
