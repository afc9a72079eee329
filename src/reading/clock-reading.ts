import { millisecondsText } from '../locale/number-text';
import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { Clock, ClockStep } from '../../dsp/timing/clock';
import type { FaultPlace } from '../../dsp/timing/locate-fault';
import type { Schedule } from '../take/schedule';
import type { ClockFault, ClockReading, Fault } from './reading';

/** The clock as a reading. */
export function clockReading(clock: Clock, schedule: Schedule): ClockReading {
  return {
    skewPpm: clock.skewPpm,
    skewInterval: clock.skewInterval,
    faults: clock.steps.map((step) => clockFault(step, schedule)),
  };
}

function clockFault(step: ClockStep, schedule: Schedule): ClockFault {
  return {
    kind: step.kind,
    samples: step.samples,
    channel: segmentIn(schedule, step.interval)?.channel ?? null,
  };
}

/** The segment of an interval; the first of several that overlap. */
function segmentIn({ segments, markStarts }: Schedule, interval: number) {
  return segments.find(({ markStart }) => markStart === markStarts[interval]);
}

/** What a channel's segment says of the audio that was lost or repeated in it, and where. */
export function stepFault(step: ClockStep, sampleRate: number, place: FaultPlace | null): Fault {
  const milliseconds = millisecondsText(step.samples / sampleRate, 1);
  const size = msg(str`${withUnit(numberText(step.samples, 0), 'samples')} (${milliseconds})`);
  const what = step.kind === 'lost' ? msg('Lost') : msg('Repeated');
  if (!place) {
    const sentence = msg(str`${what} audio: ${size} somewhere in this segment. Repeat it.`);
    return { kind: step.kind, sentence };
  }
  const seconds = numberText(place.atSample / sampleRate, 2);
  const where = msg(
    str`at ${withUnit(seconds, 's')} of the capture, the sweep being at ${withUnit(numberText(place.sweepHz, 0), 'Hz')}`,
  );
  const sentence = msg(
    str`${what} audio: ${size} ${where}. It was mended before reading; repeat this segment to be sure of it.`,
  );
  return { kind: step.kind, sentence };
}
