import { signedText } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { MarkGain } from '../../dsp/timing/mark-gains';
import { intervalOf } from '../take/mark-intervals';
import type { Schedule } from '../take/schedule';
import type { SegmentCheck } from './check-capture';
import type { Fault } from './reading';

/** Two marks are of one gain if they differ by less than this, dB, or by so many deviations. */
const leastStepDb = 0.25;
const deviations = 4;

/**
 * The checks with a fault of kind 'gain' on every segment whose gain is not that of the reference
 * speaker's own sweep; a step between a segment's marks spoils it. `gains` per mark, null where it
 * was not heard; marks that something sounded over are passed over.
 */
export function checkGains(
  checks: readonly SegmentCheck[],
  gains: readonly (MarkGain | null)[],
  schedule: Schedule,
): readonly SegmentCheck[] {
  const { segments, reference } = schedule;
  const places = segments.map((segment) => gainAround(gains, intervalOf(schedule, segment)));
  const own = places.find(
    (place, index) => segments[index]?.channel === reference && place && place.step === null,
  );
  return checks.map((check, index) => {
    const place = places[index];
    if (!place) return check;
    if (place.step !== null) {
      const sentence = msg(
        str`The gain changed by ${signedText(place.step, 1)} dB within this segment. Leave all volumes alone and repeat it.`,
      );
      return spoil(check, { kind: 'gain', sentence });
    }
    const difference = own ? differenceOf(own.gain, place.gain) : null;
    if (difference === null) return check;
    const sentence = msg(
      str`The gain is ${signedText(difference, 1)} dB against that of ${reference}'s own sweep: no level. Leave all volumes alone and repeat this segment.`,
    );
    return { ...check, faults: [...check.faults, { kind: 'gain', sentence }] };
  });
}

function spoil(check: SegmentCheck, fault: Fault): SegmentCheck {
  const why = msg('The gain changed while this segment played: repeat it.');
  return { ...check, faults: [...check.faults, fault], spoilt: check.spoilt ?? why };
}

interface GainPlace {
  readonly gain: MarkGain;
  /** Change from the marks before to those after, dB; null when there is none. */
  readonly step: number | null;
}

/** Gain by the nearest good marks before and after an interval; null without one on a side. */
function gainAround(gains: readonly (MarkGain | null)[], interval: number): GainPlace | null {
  const isGood = (one: MarkGain | null | undefined): one is MarkGain =>
    one !== null && one !== undefined && !one.disturbed;
  const before = gains.slice(0, interval + 1).findLast(isGood);
  const after = gains.slice(interval + 1).find(isGood);
  if (!before || !after) return null;
  return { gain: before, step: differenceOf(before, after) };
}

/** How much the second is over the first, dB; null when they are of one gain. */
function differenceOf(first: MarkGain, second: MarkGain): number | null {
  const difference = second.db - first.db;
  const sure = deviations * Math.hypot(first.sigmaDb, second.sigmaDb);
  return Math.abs(difference) > Math.max(leastStepDb, sure) ? difference : null;
}
