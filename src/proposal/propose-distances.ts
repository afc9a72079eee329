import { msg, str } from '@lit/localize';
import { withUnit } from '../locale/number-text';
import { temperatureText } from '../locale/temperature-text';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Readings } from '../reading/reading';
import type { ChannelLabel } from '../system/channel';
import { metresIn } from '../system/sheet/steps-of-sheet';
import type { Abilities } from './abilities';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { sayLossDb, sayMetres, sayMs, sayNumber, startSentence } from './phrases';
import type { ChannelProposal } from './proposal';
import { isWithin, quantise } from './quantise';
import { groundsOf, sayReasons, type Reason } from './reason';

export type DistanceProposal = Pick<
  ChannelProposal,
  'distance' | 'distanceMetres' | 'distanceReason' | 'distanceReasons'
>;

export interface DistanceCase {
  readonly members: readonly ChannelMeasurement[];
  readonly readings: Readings;
  readonly processor: Abilities;
  /** Wished distances of subs that were aligned; they may lie below 0. */
  readonly aligned: ReadonlyMap<ChannelLabel, number>;
  /** Crossover in force of a channel, Hz, for what rounding costs there; null without. */
  readonly crossoverHzOf: (member: ChannelMeasurement) => number | null;
}

/**
 * Proposes the distance to type for a channel, in the processor's steps and range, m. A processor delays
 * each speaker against the farthest, so when some lie outside the range all are moved together.
 */
export function distanceProposer(
  one: DistanceCase,
): (member: ChannelMeasurement) => DistanceProposal {
  const { members, aligned, processor } = one;
  const known = members.flatMap((member) => {
    const wished = aligned.get(member.channel.label);
    const path = usefulPath(member);
    if (wished !== undefined) return [wished];
    return path !== null && path > 0 ? [path] : [];
  });
  const shift = commonShift(known, processor.distanceRangeMetres, processor.distanceStepMetres);
  return (member) => proposeDistance(member, shift, one);
}

function proposeDistance(
  member: ChannelMeasurement,
  shift: number,
  { readings, processor, aligned, crossoverHzOf }: DistanceCase,
): DistanceProposal {
  const { channel } = member;
  const wished = aligned.get(channel.label);
  const metres = wished ?? usefulPath(member);
  if (metres === null) return untold(plain(sayMissing(member, 'arrival')));
  if (wished === undefined && metres <= 0) {
    return untold({
      sentence: msg(
        str`The arrival of ${channel.name} would put it ${sayMetres(metres)} away, which cannot be: repeat its sweep.`,
      ),
      grounds: groundsOf([channel.label], 'arrivalSeconds'),
    });
  }
  const { distanceStepMetres: step, distanceRangeMetres: range, distanceUnit: unit } = processor;
  const finding =
    wished === undefined ? sayFinding(member, metres, readings) : sayAligned(member, metres);
  if (!isWithin(metres + shift, range)) {
    return untold(
      finding,
      plain(
        msg(
          str`The speakers lie farther apart than the processor's ${sayStep(range[0], unit)} to ${sayStep(range[1], unit)} can say, so ${channel.name} cannot be typed.`,
        ),
      ),
    );
  }
  const typed = quantise(metres + shift, step, range);
  const lateSeconds = (typed - metres - shift) / speedOfSound(readings.temperatureCelsius);
  const costMs = Math.abs(1000 * lateSeconds);
  const costDb = costAt(crossoverHzOf(member), lateSeconds);
  const moved = msg(
    str`All distances are moved by ${sayStep(shift, unit)} together, which changes no delay, to fit the processor's range.`,
  );
  const inSum = costDb >= 0.05 ? msg(str` and ${sayLossDb(costDb)} at the crossover`) : '';
  const reasons = [
    finding,
    ...(channel.label === readings.reference ? [sayDifferences(readings)] : []),
    ...(shift === 0 ? [] : [plain(moved)]),
    plain(
      msg(
        str`Rounding to ${sayStep(step, unit)} costs ${withUnit(sayNumber(costMs, 2), 'ms')}${inSum}.`,
      ),
    ),
  ];
  return {
    distance: {
      value: inUnit(typed, unit),
      unit,
      step: inUnit(step, unit),
      costMs,
      costDb,
    },
    distanceMetres: typed,
    distanceReason: sayReasons(reasons),
    distanceReasons: reasons,
  };
}

/** What two equal sources so far apart in time lose together at a frequency, dB. */
function costAt(hz: number | null, seconds: number): number {
  if (hz === null) return 0;
  return -20 * Math.log10(Math.max(Math.abs(Math.cos(Math.PI * hz * seconds)), 1e-6)) + 0;
}

function inUnit(metres: number, unit: 'm' | 'ft'): number {
  return Number((metres / metresIn[unit]).toFixed(6)) + 0;
}

function sayStep(metres: number, unit: 'm' | 'ft'): string {
  return withUnit(sayNumber(inUnit(metres, unit), 2), unit);
}

function untold(...reasons: Reason[]): DistanceProposal {
  const distanceReason = sayReasons(reasons);
  return { distance: null, distanceMetres: null, distanceReason, distanceReasons: reasons };
}

function plain(sentence: string): Reason {
  return { sentence, grounds: [] };
}

/** Why a wrong tape distance does no harm, and what the differences rest on. */
function sayDifferences({ absolute, temperatureCelsius }: Readings): Reason {
  const given = absolute
    ? ''
    : msg(' Only differences matter: an error of the tape moves all alike.');
  const air = msg(
    str`The others follow from their arrivals at the speed of sound of ${temperatureText(temperatureCelsius, 0)}.`,
  );
  return plain(`${air}${given}`);
}

function sayAligned({ channel, reading }: ChannelMeasurement, metres: number): Reason {
  const arrival = reading?.distanceMetres ?? null;
  const beside =
    arrival === null ? '' : msg(str` By its arrival alone it would be ${sayMetres(arrival)}.`);
  return {
    sentence: startSentence(
      msg(str`${channel.name} adds up best with the mains at ${sayMetres(metres)}.${beside}`),
    ),
    grounds: groundsOf([channel.label], 'bass'),
  };
}

function sayFinding(member: ChannelMeasurement, metres: number, readings: Readings): Reason {
  const grounds = groundsOf([member.channel.label], 'distanceMetres');
  return { sentence: startSentence(findingOf(member, metres, readings)), grounds };
}

function findingOf(
  { channel, reading }: ChannelMeasurement,
  metres: number,
  readings: Readings,
): string {
  if (channel.label === readings.reference) {
    return msg(
      str`${channel.name} is the reference; its distance was given as ${sayMetres(metres)}.`,
    );
  }
  if (typeof reading?.ceilingPathMetres === 'number') {
    return msg(str`${channel.name} is heard over the ceiling, a path of ${sayMetres(metres)}.`);
  }
  const arrival = reading?.arrivalSeconds ?? null;
  const interval = reading?.distanceInterval ?? null;
  const between = interval
    ? msg(str` (90 % between ${sayMetres(interval[0])} and ${sayMetres(interval[1])})`)
    : '';
  if (arrival === null) return msg(str`${channel.name} is ${sayMetres(metres)} away${between}.`);
  const when = arrival < 0 ? msg('before') : msg('after');
  return msg(
    str`${channel.name} is heard ${sayMs(arrival)} ${when} the reference: ${sayMetres(metres)}${between}.`,
  );
}

/** The path whose delay matters: over the ceiling for a bounced height, else straight. */
export function usefulPath({ reading }: ChannelMeasurement): number | null {
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
