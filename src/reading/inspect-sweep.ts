import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { Disturbance } from '../../dsp/disturbance/disturbance';
import { findDisturbances } from '../../dsp/disturbance/find-disturbances';
import type { CheckedSegment } from './gather-sweeps';
import type { Responder, SegmentResponse } from './impulse-responses';
import { playedBand } from './played-band';
import type { Fault } from './reading';

/** A sweep that was read, with what was found wrong in it. */
export interface InspectedSweep extends CheckedSegment {
  /** Null when its segment is spoilt. */
  readonly response: SegmentResponse | null;
  /** What was heard besides that is not worth a repeat. */
  readonly notes: readonly string[];
}

/** Moving the response by less is no fault, dB; less too where other sweeps hide much of it. */
const leastFaultDb = { alone: 1, overlapping: 0.5 } as const;

/** Sweeps that end below this are those of subs, Hz. */
const subSweepHz = 2000;

/**
 * Reads a segment and listens for sound that was not the take's, against the take's silence. A segment that had to be mended is not listened to: its joint is
 * a click by itself.
 */
export function inspectSweep(
  { segment, check }: CheckedSegment,
  { respond }: Pick<Responder, 'respond'>,
): InspectedSweep {
  if (check.spoilt !== null) return { segment, check, response: null, notes: [] };
  const response = respond(segment, check.mend?.atSample ?? undefined);
  if (check.mend) return { segment, check, response, notes: [] };
  const { ir, heard, sweepAt, sweep, silence, others } = response;
  const overlapping = others();
  const least = leastFaultDb[overlapping.length > 0 ? 'overlapping' : 'alone'];
  const found = findDisturbances({
    heard,
    sweepAt,
    sweep,
    ir,
    silence,
    playedHz: playedBand(ir, segment.sweep.endHz < subSweepHz),
    others: overlapping,
  });
  const faults = found.filter(({ errorDb }) => errorDb >= least).map(disturbanceFault);
  const notes = found.filter(({ errorDb }) => errorDb < least).map(sayDisturbance);
  const worse = faults.length === 0 ? check : { ...check, faults: [...check.faults, ...faults] };
  return { segment, check: worse, response, notes: notes.map((what) => `${what}.`) };
}

const names = {
  get bang() {
    return msg('A bang');
  },
  get rumble() {
    return msg('Rumble');
  },
  get hum() {
    return msg('Hum');
  },
  get voice() {
    return msg('A voice');
  },
  get noisy() {
    return msg('Noise');
  },
} as const;

function disturbanceFault(found: Disturbance): Fault {
  const advice = msg('Repeat this segment when it is quiet.');
  return { kind: found.kind, sentence: `${sayDisturbance(found)}. ${advice}` };
}

function sayDisturbance(found: Disturbance): string {
  const { kind, fromSeconds, toSeconds, lowHz, highHz, errorDb, errorHz } = found;
  const from = numberText(Math.max(0, fromSeconds), 1);
  const when =
    toSeconds - fromSeconds < 0.5
      ? msg(str`${withUnit(from, 's')} into the sweep`)
      : msg(str`from ${from} to ${withUnit(numberText(toSeconds, 1), 's')} of the sweep`);
  const band = msg(str`${numberText(lowHz, 0)} to ${withUnit(numberText(highHz, 0), 'Hz')}`);
  return msg(
    str`${names[kind]} ${when} (${band}) may move the response by ${withUnit(numberText(errorDb, 1), 'dB')} near ${withUnit(numberText(errorHz, 0), 'Hz')}`,
  );
}
