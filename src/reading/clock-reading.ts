import type { Clock, ClockStep } from '../../dsp/timing/clock';
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
    channel: schedule.segments[step.interval]?.channel ?? null,
  };
}

/** What a channel's segment says of the audio that was lost or repeated in it. */
export function stepFault(step: ClockStep, sampleRate: number): Fault {
  const milliseconds = ((1000 * step.samples) / sampleRate).toFixed(1);
  const size = `${step.samples.toFixed(step.samples % 1 === 0 ? 0 : 1)} samples (${milliseconds} ms)`;
  return {
    kind: step.kind,
    sentence: `${step.kind === 'lost' ? 'Lost' : 'Repeated'} audio: ${size} in this segment. Its numbers are not to be trusted; repeat it.`,
  };
}
