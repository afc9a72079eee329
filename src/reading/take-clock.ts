import { msg, str } from '@lit/localize';
import type { Samples } from '../../dsp/signal/samples';
import type { Arrival } from '../../dsp/timing/arrival';
import type { Clock } from '../../dsp/timing/clock';
import { findArrival } from '../../dsp/timing/find-arrival';
import type { MarkFinding } from '../../dsp/timing/mark-finding';
import { intervalOf } from '../take/mark-intervals';
import type { Schedule } from '../take/schedule';
import { isTrouble, type Trouble } from '../trouble';
import { createResponder } from './impulse-responses';
import { hearMarks, matchClock, type CapturedAudio } from './match-clock';
import { arrivalFromMarks } from './reference-arrival';

/** The clock of a take and, by a loopback, when its sound left. */
export interface TakeClock {
  readonly clock: Clock;
  /** Zero of absolute time in the responses, from the loopback; null without one. */
  readonly departure: Arrival | null;
  /** The marks in the microphone; null when none are heard there. */
  readonly heard: MarkFinding | null;
  readonly notes: readonly string[];
}

/**
 * The take's clock from the marks in the loopback, else from those in the microphone. A loopback
 * that carries no marks is left aside, and said. A Trouble as from matchClock.
 */
export function takeClock(
  microphone: CapturedAudio,
  loopback: CapturedAudio | null,
  schedule: Schedule,
): TakeClock | Trouble {
  const wired = loopback && matchClock(loopback, schedule);
  if (loopback && wired && !isTrouble(wired)) {
    const departure = readDeparture(loopback.samples, wired.clock, schedule);
    const notes = departure
      ? []
      : [msg(`The loopback tells no moment of departure: distances rest on the tape.`)];
    return { clock: wired.clock, departure, heard: hearMarks(microphone, schedule), notes };
  }
  const heard = matchClock(microphone, schedule);
  if (isTrouble(heard)) return heard;
  const note = msg(
    str`The loopback carries none of the take's marks: times are those of the room, and distances rest on the tape. Wire it to the output that feeds ${schedule.reference}.`,
  );
  const { clock, finding } = heard;
  return { clock, departure: null, heard: finding, notes: loopback ? [note] : [] };
}

/** Arrival of the reference speaker's sweep in the loopback, or of its marks. */
function readDeparture(loopback: Samples, clock: Clock, schedule: Schedule): Arrival | null {
  const whole = schedule.segments.find((segment) => {
    const interval = intervalOf(schedule, segment);
    const { standing, lostSamples } = clock.segments[interval] ?? {};
    return segment.channel === schedule.reference && standing === 'marked' && lostSamples === 0;
  });
  const { respond } = createResponder(loopback, clock, schedule);
  const arrival = whole ? findArrival(respond(whole).ir) : null;
  if (arrival && !arrival.bandAdapted) return arrival;
  return arrivalFromMarks(loopback, clock, schedule);
}
