import type { FilterSpec } from '../filter/analogue';
import { alignSub, overlaps, scanAlignment, type AlignmentOptions } from './align-sub';
import { distanceCostDb } from './delay-candidates';
import {
  decider,
  firstStepFrom,
  measuredStep,
  practiceStep,
  type Decider,
  type SpeakerLimits,
} from './crossover-rules';
import type { DelayAndPolarity } from './delay-scan';
import { figuresAt, playSides, scanSides } from './played-sides';
import type { Dip } from './predict-sum';
import type { SeatTransfers } from './transfer';

/** One speaker of a group that shares a crossover. */
export interface CandidateSpeaker extends SpeakerLimits {
  /** Its bass without high-pass; null where it was not captured at the seats. */
  readonly seats: SeatTransfers | null;
}

export interface CandidateSub {
  readonly seats: SeatTransfers;
  /** Where the sub's own upper end is 6 dB down; null where that is not known. */
  readonly upperHz: number | null;
  /** Delay of the sub at which the arrivals line up that were read; left out where not known. */
  readonly arrivalDelaySeconds?: number;
  /**
   * What another group has it set to at a step, null where that is not told there; left out where
   * it is aligned anew for each step.
   */
  readonly setAt?: (stepHz: number) => DelayAndPolarity | null;
}

export interface CandidateTerms {
  readonly hz: Float64Array;
  /** The processor's steps, rising. */
  readonly stepsHz: readonly number[];
  /** The processor's filters at a crossover. */
  filters(crossoverHz: number): {
    readonly highPass: readonly FilterSpec[];
    readonly lowPass: readonly FilterSpec[];
  };
  /** Whether a sub that is heard where it stands disturbs: for speakers about the listener. */
  readonly isBed: boolean;
  /**
   * What counts against a step of the bed an octave above 120 Hz, dB, growing with the square;
   * default 1, for speakers beside a sub in front.
   */
  readonly localisedDb?: number;
}

/** The sum of the group with the sub at one step, the sub as it is set or aligned for the step. */
export interface CandidateSum {
  /** Mean over seats and speakers, dB. */
  readonly lossDb: number;
  readonly dip: Dip;
  readonly delaySeconds: number;
  readonly inverted: boolean;
  /** What counts against the delay, far from where the direct sounds line up, dB, 0 or more. */
  readonly distanceDb: number;
  /** The speaker that loses most, and how much. */
  readonly worst: { readonly name: string; readonly lossDb: number };
}

/** One step with all that speaks for and against it. */
export interface CrossoverCandidate {
  readonly stepHz: number;
  /** Whether the rule of practice, or the measured rule, lands on this step. */
  readonly practice: boolean;
  readonly measured: boolean;
  /** What it is too low or too high for. */
  readonly breaks: readonly (Decider['by'] | 'sub reach')[];
  /** Above 120 Hz in the bed a sub begins to be heard where it stands (common practice). */
  readonly localised: boolean;
  /** Null where no sub, or no speaker at the same seats, was captured, or no delay can be told. */
  readonly sum: CandidateSum | null;
  /**
   * What ranks steps that break nothing, dB: lost energy + what counts against the delay + 0.1 for
   * every octave from what is needed + localisedDb for one above where a sub is localised + 0.05
   * for all but the first step that will do.
   */
  readonly costDb: number;
}

export interface CrossoverCandidates {
  /** The best first. */
  readonly candidates: readonly CrossoverCandidate[];
  readonly practiceHz: number | null;
  readonly measuredHz: number | null;
  /** The speaker that asks for the highest crossover; null when nothing is known of any. */
  readonly decidedBy: Decider | null;
}

const localisedHz = 120;
/** Learnt in tuning rooms of tests/accuracy, as the loss at seats that were not measured. */
const octaveDb = 0.1;
const besideSubDb = 1;
/** Less than this is no reason to go higher than the first step that will do. */
const movedDb = 0.05;
const rounding = 1e-9;

/**
 * Every step of a processor as the crossover of a group, ranked: those that break nothing first,
 * by lost energy at all seats, a little counting against each octave above what the speakers need
 * (costDb); then by how many limits they break and how far. A higher step thus wins only by a better
 * sum: which step meets the room well is what moves the loss most, also at seats not measured.
 * Throws RangeError for steps that do not rise from above 0, no speakers, and what alignSub refuses.
 */
export function crossoverCandidates(
  speakers: readonly CandidateSpeaker[],
  sub: CandidateSub | null,
  terms: CandidateTerms,
): CrossoverCandidates {
  const { stepsHz, localisedDb = besideSubDb } = terms;
  if (speakers.length === 0) throw new RangeError('speakers must hold at least one, got none');
  if (stepsHz.length === 0 || stepsHz.some((step, i) => !(step > (stepsHz[i - 1] ?? 0)))) {
    throw new RangeError(`stepsHz must rise from above 0, got ${stepsHz.join(', ')}`);
  }
  const practiceHz = practiceStep(speakers, stepsHz);
  const measuredHz = measuredStep(speakers, stepsHz);
  const decidedBy = decider(speakers);
  const neededHz = decidedBy?.neededHz ?? practiceHz ?? stepsHz[0] ?? 0;
  const upperHz = sub?.upperHz ?? Infinity;
  const sums = stepsHz.map((stepHz) => sub && sumAt(stepHz, speakers, sub, terms));
  const sumCost = (sum: CandidateSum): number => sum.lossDb + sum.distanceDb;
  // A step whose sum cannot be told is not better for it.
  const mostDb = Math.max(0, ...sums.flatMap((sum) => (sum ? [sumCost(sum)] : [])));
  const firstHz = firstStepFrom(neededHz, stepsHz) ?? Infinity;
  const localisedFrom = Math.max(localisedHz, neededHz);
  const judged = stepsHz.map((stepHz, index) => {
    const sum = sums[index] ?? null;
    const above = Math.log2(stepHz / neededHz);
    const heard = terms.isBed ? Math.max(0, Math.log2(stepHz / localisedFrom)) : 0;
    const breaks = [...brokenLimits(stepHz, speakers), ...(stepHz > upperHz ? [reach] : [])];
    const againstDb =
      octaveDb * Math.abs(above) + localisedDb * heard ** 2 + (stepHz > firstHz ? movedDb : 0);
    const candidate: CrossoverCandidate = {
      stepHz,
      practice: stepHz === practiceHz,
      measured: stepHz === measuredHz,
      breaks,
      localised: terms.isBed && stepHz > localisedHz,
      sum,
      costDb: (sum ? sumCost(sum) : mostDb) + againstDb,
    };
    return { candidate, far: Math.max(-above, Math.log2(stepHz / upperHz), 0) };
  });
  const candidates = judged
    .toSorted((a, b) => {
      const broken = a.candidate.breaks.length - b.candidate.breaks.length;
      if (broken !== 0) return broken;
      if (a.candidate.breaks.length > 0 && a.far !== b.far) return a.far - b.far;
      return a.candidate.costDb - b.candidate.costDb || a.candidate.stepHz - b.candidate.stepHz;
    })
    .map(({ candidate }) => candidate);
  return { candidates, practiceHz, measuredHz, decidedBy };
}

const reach = 'sub reach' as const;

function brokenLimits(
  stepHz: number,
  speakers: readonly SpeakerLimits[],
): CrossoverCandidate['breaks'] {
  const broken = speakers.flatMap((speaker) => {
    const rolloff = decider([{ ...speaker, lowest: null }]);
    const drive = decider([{ ...speaker, f6UpperHz: null }]);
    return [rolloff, drive].flatMap((one) =>
      one !== null && stepHz < one.neededHz - rounding ? [one.by] : [],
    );
  });
  return [...new Set(broken)];
}

function sumAt(
  stepHz: number,
  speakers: readonly CandidateSpeaker[],
  sub: CandidateSub,
  { hz, filters }: CandidateTerms,
): CandidateSum | null {
  const low = sub.seats;
  const heard = speakers.flatMap(({ name, seats }) =>
    seats && seats.length === low.length ? [{ name, seats }] : [],
  );
  if (heard.length === 0) return null;
  const options: AlignmentOptions = { hz, crossoverHz: stepHz, ...filters(stepHz) };
  const at = sub.setAt
    ? asSet(sub.setAt(stepHz), heard, low, options)
    : alignAnew(sub, heard, options);
  if (!at) return null;
  const losses = heard.map(({ name, seats }) => ({
    name,
    lossDb: scanAlignment([{ seats }], low, options).lossDb(at),
  }));
  return { ...at, worst: losses.reduce((most, one) => (one.lossDb > most.lossDb ? one : most)) };
}

type SumOfAll = Omit<CandidateSum, 'worst'>;

/** Null where nothing is set, or no delay matters, so that none can be told. */
function asSet(
  set: DelayAndPolarity | null,
  mains: readonly { readonly seats: SeatTransfers }[],
  low: SeatTransfers,
  options: AlignmentOptions,
): SumOfAll | null {
  const played = playSides(mains, low, options);
  const scan = scanSides(played);
  if (!set || !overlaps(scan)) return null;
  const { delaySeconds, inverted } = set;
  const { lossDb, dip } = figuresAt(played, scan, set);
  return { lossDb, dip, delaySeconds, inverted, distanceDb: 0 };
}

function alignAnew(
  { seats, arrivalDelaySeconds }: CandidateSub,
  mains: readonly { readonly seats: SeatTransfers }[],
  options: AlignmentOptions,
): SumOfAll | null {
  const arrival =
    arrivalDelaySeconds === undefined
      ? {}
      : { wired: { delaySeconds: arrivalDelaySeconds, inverted: false }, arrivalDelaySeconds };
  const aligned = alignSub(mains, seats, { ...options, ...arrival });
  if (aligned.kind === 'cannot tell') return null;
  const { lossDb, dip, delaySeconds, inverted, centreSeconds } = aligned;
  const distanceDb = distanceCostDb(delaySeconds, centreSeconds, 1 / options.crossoverHz);
  return { lossDb, dip, delaySeconds, inverted, distanceDb };
}
