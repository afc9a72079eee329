import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { estimateClock } from '../../dsp/timing/estimate-clock';
import { findMarks } from '../../dsp/timing/find-marks';
import { sweepSharpness } from '../../dsp/timing/sweep-sharpness';
import { captureSample, type Clock } from '../../dsp/timing/clock';
import type { MarkBand } from '../../dsp/timing/mark-band';
import type { MarkFinding } from '../../dsp/timing/mark-finding';
import { bundleOf, intervalOf } from '../take/mark-intervals';
import type { Schedule } from '../take/schedule';
import { trouble, type Trouble } from '../trouble';
import type { Samples } from '../../dsp/signal/samples';

/** Capture samples and their rate; mono. */
export interface CapturedAudio {
  readonly samples: Samples;
  readonly sampleRate: number;
  /** In the band of its marks, where that was made already. */
  readonly band?: MarkBand;
}

export interface MatchedClock {
  readonly clock: Clock;
  readonly finding: MarkFinding;
}

/** Rates a recorder may have used while writing another into the file. */
const usualRates = [44100, 48000, 88200, 96000];
const largestSkewPpm = 500;

/**
 * The capture's clock against the schedule's, from its marks. A Trouble when no marks are heard,
 * when they are those of another take, when the take is cut off, or when the file's rate is wrong.
 */
export function matchClock(capture: CapturedAudio, schedule: Schedule): MatchedClock | Trouble {
  const { sampleRate, markStarts } = schedule;
  const finding = hearMarks(capture, schedule);
  const found = finding?.marks.filter((mark) => mark !== null).length ?? 0;
  if (!finding || found < 2) {
    return wrongRate(capture, schedule) ?? noMarks(schedule, found);
  }
  if (finding.take === 'other take') {
    const rate = finding.strayMarks.length === 0 ? wrongRate(capture, schedule) : null;
    if (rate) return rate;
    const stray = finding.strayMarks.length;
    const why =
      stray > 0
        ? msg(str`${stray} more of its marks stand where this take has none`)
        : msg('its marks are spaced differently');
    return trouble(
      'other-take',
      msg(
        str`The capture holds a different take than the schedule (${schedule.layout}, ${schedule.id}): ${why}. Give the take.json that was saved with the WAV that was played.`,
      ),
    );
  }
  const alone = schedule.segments.filter((segment) => bundleOf(schedule, segment).length === 1);
  const sweeps = alone.map((segment) => ({
    mark: intervalOf(schedule, segment),
    startSample: segment.sweepStart,
    sweep: { ...segment.sweep, sampleRate },
  }));
  const sharpness = sweepSharpness(capture.samples, finding, markStarts, sweeps);
  const clock = estimateClock(finding, markStarts, sharpness);
  const cut = cutOff(capture, schedule, clock);
  if (cut) return cut;
  if (finding.take === 'unclear' && found < markStarts.length / 2) return noMarks(schedule, found);
  if (Math.abs(clock.skewPpm) > largestSkewPpm) {
    return trouble(
      'wrong-rate',
      msg(
        str`The capture runs ${Math.round(clock.skewPpm)} ppm off the take's clock, more than any two audio devices do. Its sample rate of ${capture.sampleRate} Hz is probably not the rate it was recorded at.`,
      ),
    );
  }
  return { clock, finding };
}

/** The take's marks in a capture; null when there are none. */
export function hearMarks(
  { samples, sampleRate, band }: CapturedAudio,
  { mark, markStarts, sampleRate: stimulusRate }: Schedule,
): MarkFinding | null {
  const spec = { ...mark, sampleRate: stimulusRate };
  return findMarks(samples, sampleRate, spec, markStarts, stimulusRate, band);
}

function noMarks(schedule: Schedule, found: number): Trouble {
  return trouble(
    'silence',
    msg(
      str`${found < 2 ? msg('None') : msg(str`Only ${found}`)} of the ${schedule.markStarts.length} timing marks of this take can be heard in the capture. Check that ${schedule.reference} plays, that the microphone is on, and that this is the recording of this take; then run it again louder.`,
    ),
  );
}

/** A rate under which the marks would be found, when the file's own rate hides them. */
function wrongRate(capture: CapturedAudio, schedule: Schedule): Trouble | null {
  const mark = { ...schedule.mark, sampleRate: schedule.sampleRate };
  for (const rate of usualRates) {
    if (rate === capture.sampleRate) continue;
    const finding = findMarks(capture.samples, rate, mark, schedule.markStarts, mark.sampleRate);
    if (finding?.take !== 'this take') continue;
    return trouble(
      'wrong-rate',
      msg(
        str`The capture says ${capture.sampleRate} Hz, but its marks fit only at ${rate} Hz: its sample rate is wrong. Save the recording again with the rate it was made at.`,
      ),
    );
  }
  return null;
}

/** The capture must hold everything from the first sweep to the last mark. */
function cutOff(capture: CapturedAudio, schedule: Schedule, clock: Clock): Trouble | null {
  const last = schedule.markStarts.length - 1;
  const end = captureSample(
    clock,
    last,
    (schedule.markStarts[last] ?? 0) + schedule.mark.lengthSamples,
  );
  const missing = (end - capture.samples.length) / capture.sampleRate;
  const firstMark = captureSample(clock, 0, schedule.markStarts[0] ?? 0);
  if (missing > 0) {
    return trouble(
      'too-short',
      msg(
        str`The capture ends ${withUnit(numberText(missing, 1), 's')} before the take does: it is shorter than the take. Record until the take has ended.`,
      ),
    );
  }
  if (firstMark < 0) {
    return trouble(
      'too-short',
      msg(
        str`The capture begins ${withUnit(numberText(-firstMark / capture.sampleRate, 1), 's')} after the first mark of the take. Start recording before the take plays.`,
      ),
    );
  }
  return null;
}
