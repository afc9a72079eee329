import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Readings } from '../reading/reading';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { sayMetres, sayNumber, startSentence } from './phrases';
import type { ProcessorSteps } from './proposal';
import { isWithin, quantise } from './quantise';

export interface DistanceProposal {
  readonly distanceMetres: number | null;
  readonly distanceReason: string;
}

/**
 * Proposes the distance to type for a channel, in the processor's steps and range, m. A processor delays
 * each speaker against the farthest, so when some lie outside the range all are moved together.
 */
export function distanceProposer(
  members: readonly ChannelMeasurement[],
  readings: Readings,
  processor: ProcessorSteps,
): (member: ChannelMeasurement) => DistanceProposal {
  const range = processor.distanceRangeMetres;
  const known = members
    .map(usefulPath)
    .filter((metres): metres is number => metres !== null && metres > 0);
  const shift = commonShift(known, range, processor.distanceStepMetres);
  return (member) => proposeDistance(member, shift, readings, processor);
}

function proposeDistance(
  member: ChannelMeasurement,
  shift: number,
  readings: Readings,
  processor: ProcessorSteps,
): DistanceProposal {
  const { channel } = member;
  const metres = usefulPath(member);
  if (metres === null) {
    return { distanceMetres: null, distanceReason: sayMissing(member, 'arrival') };
  }
  if (metres <= 0) {
    return {
      distanceMetres: null,
      distanceReason: `The arrival of ${channel.name} would put it ${sayMetres(metres)} away, which cannot be: repeat its sweep.`,
    };
  }
  const { distanceStepMetres: step, distanceRangeMetres: range } = processor;
  const finding = sayFinding(member, metres, readings);
  if (!isWithin(metres + shift, range)) {
    return {
      distanceMetres: null,
      distanceReason: `${finding} The speakers lie farther apart than the processor's ${sayMetres(range[0])} to ${sayMetres(range[1])} can say, so ${channel.name} cannot be typed.`,
    };
  }
  const typed = quantise(metres + shift, step, range);
  const costMs = (1000 * (typed - metres - shift)) / speedOfSound(readings.temperatureCelsius);
  const moved =
    shift === 0
      ? ''
      : ` All distances are moved by ${sayMetres(shift)} together, which changes no delay, to fit the processor's range.`;
  return {
    distanceMetres: typed,
    distanceReason: `${finding}${moved} Rounding to ${sayNumber(step, 2)} m costs ${sayNumber(Math.abs(costMs), 2)} ms.`,
  };
}

function sayFinding(member: ChannelMeasurement, metres: number, readings: Readings): string {
  const { channel, reading } = member;
  if (channel.label === readings.reference) {
    return startSentence(
      `${channel.name} is the reference; its distance was given as ${sayMetres(metres)}.`,
    );
  }
  if (typeof reading?.ceilingPathMetres === 'number') {
    return startSentence(
      `${channel.name} is heard over the ceiling, a path of ${sayMetres(metres)}.`,
    );
  }
  const arrival = reading?.arrivalSeconds ?? null;
  const interval = reading?.distanceInterval ?? null;
  const between = interval
    ? ` (90 % between ${sayMetres(interval[0])} and ${sayMetres(interval[1])})`
    : '';
  if (arrival === null)
    return startSentence(`${channel.name} is ${sayMetres(metres)} away${between}.`);
  const when = arrival < 0 ? 'before' : 'after';
  return startSentence(
    `${channel.name} is heard ${sayNumber(Math.abs(arrival) * 1000, 2)} ms ${when} the reference: ${sayMetres(metres)}${between}.`,
  );
}

/** The path whose delay matters: over the ceiling for a bounced height, else straight. */
function usefulPath({ reading }: ChannelMeasurement): number | null {
  return reading?.ceilingPathMetres ?? reading?.distanceMetres ?? null;
}

/** The least common shift, in whole steps, that brings all within range; 0 when none can. */
function commonShift(
  metres: readonly number[],
  [low, high]: readonly [number, number],
  step: number,
): number {
  if (metres.length === 0) return 0;
  const nearest = Math.min(...metres);
  const farthest = Math.max(...metres);
  const up = Math.ceil((low - nearest) / step - 1e-9) * step;
  const down = Math.floor((high - farthest) / step + 1e-9) * step;
  if (up > down) return 0;
  return Math.min(Math.max(0, up), down) + 0;
}
