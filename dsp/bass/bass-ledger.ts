import type { FilterSpec } from '../filter/analogue';
import { powerToDb } from '../level/decibels';
import { curveOfFilter, ledgerGrid, type LedgerCurve } from './ledger-curves';
import { findOpener, REACHED, type LedgerParts, type LedgerSetting } from './ledger-opener';

/** One channel of a programme. */
export interface LedgerChannel {
  readonly name: string;
  /** Its own speaker re its passband; null for LFE, which has none. */
  readonly speaker: LedgerCurve | null;
  /** Null for full range. */
  readonly crossoverHz: number | null;
}

export interface LedgerSettings {
  readonly channels: readonly LedgerChannel[];
  /** The subs re the band they are levelled in; none where there are none. */
  readonly subs: readonly LedgerCurve[];
  /** Fronts that carry the bass of other channels where there are no subs; else none. */
  readonly fronts: readonly LedgerCurve[];
  /** The processor's filters of a crossover. */
  readonly highPass: Pick<FilterSpec, 'family' | 'order'>;
  readonly lowPass: Pick<FilterSpec, 'family' | 'order'>;
  /** Both act on all that the subs play; null for off. */
  readonly subLowPass: FilterSpec | null;
  readonly lowCut: FilterSpec | null;
  /** Of the LFE channel; its content ends there. */
  readonly lfeLowPass: FilterSpec;
  /** Bass of full-range channels is copied to the subs below this; null for not. */
  readonly copiedBelowHz: number | null;
}

/** A stretch of frequencies that reach nobody: below −6 dB re the target. */
export interface LedgerGap {
  readonly lowHz: number;
  readonly highHz: number;
  /** The setting that opens it; null where no setting would close it. */
  readonly opens: LedgerSetting | null;
}

/** Where one channel's bass goes, power re a flat passband on ledgerGrid. */
export interface LedgerLine {
  readonly name: string;
  readonly own: LedgerCurve;
  /** Through subs, or fronts in their stead. */
  readonly carried: LedgerCurve;
  readonly delivered: LedgerCurve;
  /** What flat speakers and subs would deliver through the same crossover. */
  readonly target: LedgerCurve;
  /** Pink-weighted energy from 20 to 300 Hz that is missing, dB, 0 or more. */
  readonly lossDb: number;
  /** What would be missing with every filter away: no setting brings that back, dB. */
  readonly leastLossDb: number;
  readonly gaps: readonly LedgerGap[];
}

const hz = ledgerGrid();
const nothing = new Float64Array(hz.length);
const flat = new Float64Array(hz.length).fill(1);

/**
 * Where the low end of every programme channel goes:
 * delivered = |speaker|²·|high-pass|² + |subs|²·|low-pass|²·|sub low-pass|²·|low cut|², the fronts in
 * the subs' stead where there are none; powers, as phase is the sum's affair. The target is the
 * same with speaker and subs flat and their other filters off, so that a crossover by itself loses
 * nothing. Loss counts delivered power up to the target: a surplus hides no gap. Curves of filters
 * are looked up. Throws RangeError for curves on another grid.
 */
export function bassLedger(settings: LedgerSettings): LedgerLine[] {
  const { subs, fronts, channels } = settings;
  for (const { speaker } of channels) checkCurve(speaker ?? flat);
  const sub = meanCurve(subs);
  const front = meanCurve(fronts);
  return channels.map((channel) => lineOf(channel, settings, sub, front));
}

function lineOf(
  { name, speaker, crossoverHz }: LedgerChannel,
  settings: LedgerSettings,
  sub: LedgerCurve | null,
  front: LedgerCurve | null,
): LedgerLine {
  const { subLowPass, lowCut, lfeLowPass, copiedBelowHz, highPass, lowPass } = settings;
  const belowHz = crossoverHz ?? copiedBelowHz;
  const carrier = sub ?? (crossoverHz === null && speaker !== null ? null : front);
  const isSub = sub !== null;
  const parts: LedgerParts = {
    speaker: speaker ?? nothing,
    carrier: carrier ?? nothing,
    highPass:
      crossoverHz === null
        ? null
        : curveOfFilter({ ...highPass, kind: 'high-pass', cutoffHz: crossoverHz }),
    lowPass:
      speaker === null
        ? curveOfFilter(lfeLowPass)
        : belowHz === null
          ? nothing
          : curveOfFilter({ ...lowPass, kind: 'low-pass', cutoffHz: belowHz }),
    subLowPass: subLowPass && isSub ? curveOfFilter(subLowPass) : null,
    lowCut: lowCut && isSub ? curveOfFilter(lowCut) : null,
    fullRange: speaker !== null && crossoverHz === null,
    isLfe: speaker === null,
  };
  const own = parts.speaker.map((power, k) => power * (parts.highPass?.[k] ?? 1));
  const carried = carriedBy(parts);
  const delivered = own.map((power, k) => power + (carried[k] ?? 0));
  const counts = (k: number): boolean =>
    speaker !== null || (hz[k] ?? 0) <= lfeLowPass.cutoffHz * (1 + 1e-9);
  const target = targetOf(parts);
  return {
    name,
    own,
    carried,
    delivered,
    target,
    lossDb: lossOf(delivered, target, counts),
    leastLossDb: lossOf(
      parts.speaker.map((power, k) => power + (parts.carrier[k] ?? 0)),
      flat,
      counts,
    ),
    gaps: gapsOf(delivered, target, counts).map(([from, to]): LedgerGap => ({
      lowHz: hz[from] ?? 0,
      highHz: hz[to] ?? 0,
      opens: findOpener(parts, target, from, to),
    })),
  };
}

/** Full range is flat; LFE falls towards the end of its band as it is meant to. */
function targetOf({ highPass, lowPass, isLfe }: LedgerParts): LedgerCurve {
  if (isLfe) return lowPass;
  return highPass ? highPass.map((power, k) => power + (lowPass[k] ?? 0)) : flat;
}

/** What subs or fronts play of a channel. */
function carriedBy({ carrier, lowPass, subLowPass, lowCut }: LedgerParts): LedgerCurve {
  return carrier.map(
    (power, k) => power * (lowPass[k] ?? 0) * (subLowPass?.[k] ?? 1) * (lowCut?.[k] ?? 1),
  );
}

function lossOf(
  delivered: LedgerCurve,
  target: LedgerCurve,
  counts: (k: number) => boolean,
): number {
  let [sum, total] = [0, 0];
  for (const [k, power] of delivered.entries()) {
    if (!counts(k)) continue;
    // The ends of the grid stand for half a step.
    const weight = k === 0 || k === hz.length - 1 ? 0.5 : 1;
    sum += weight * Math.min(1, power / (target[k] ?? 1));
    total += weight;
  }
  return Math.max(0, -powerToDb(sum / total));
}

function gapsOf(
  delivered: LedgerCurve,
  target: LedgerCurve,
  counts: (k: number) => boolean,
): [number, number][] {
  const gaps: [number, number][] = [];
  for (const [k, power] of delivered.entries()) {
    if (!counts(k) || power >= REACHED * (target[k] ?? 1)) continue;
    const last = gaps.at(-1);
    if (last && last[1] === k - 1) last[1] = k;
    else gaps.push([k, k]);
  }
  return gaps;
}

/** Several speakers levelled together: their powers' mean; null for none. */
function meanCurve(curves: readonly LedgerCurve[]): LedgerCurve | null {
  const [first] = curves;
  if (!first) return null;
  for (const curve of curves) checkCurve(curve);
  return first.map((_, k) => {
    let sum = 0;
    for (const curve of curves) sum += curve[k] ?? 0;
    return sum / curves.length;
  });
}

function checkCurve(curve: LedgerCurve): void {
  if (curve.length !== hz.length || !curve.every((power) => power >= 0 && power < Infinity)) {
    throw new RangeError(`curves must hold ${hz.length} powers of 0 or more, got ${curve.length}`);
  }
}
