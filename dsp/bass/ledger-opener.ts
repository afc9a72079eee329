import type { LedgerCurve } from './ledger-curves';

/**
 * A setting that opens a gap, and the way out: the sub low-pass up, the low cut down, the crossover
 * up or down, or a crossover for a channel that runs full range.
 */
export type LedgerSetting =
  'sub low-pass' | 'low cut' | 'crossover too low' | 'crossover too high' | 'full range';

/** One channel's ways into the room, as powers; null for a filter that is off. */
export interface LedgerParts {
  readonly speaker: LedgerCurve;
  /** Subs, or fronts in their stead; zeros for none. */
  readonly carrier: LedgerCurve;
  readonly highPass: LedgerCurve | null;
  readonly lowPass: LedgerCurve;
  readonly subLowPass: LedgerCurve | null;
  readonly lowCut: LedgerCurve | null;
  readonly fullRange: boolean;
  readonly isLfe: boolean;
}

/** Below this power re the target content reaches nobody. */
export const REACHED = 10 ** -0.6;
/** A setting opens a gap when the gap's energy grows by this factor without it: 3 dB. */
const leastGrowth = 2;

/**
 * Which setting opens the gap between two entries of the grid, both in: each is taken away by
 * itself, and the first in order whose absence closes the gap is named, or else the one whose
 * absence brings back most energy; null where none brings back 3 dB: that is the lower end of what
 * stands in the room.
 */
export function findOpener(
  parts: LedgerParts,
  target: LedgerCurve,
  from: number,
  to: number,
): LedgerSetting | null {
  const { subLowPass, lowCut, highPass, fullRange, isLfe } = parts;
  const deliver = (without: Partial<LedgerParts>): { energy: number; least: number } => {
    const { speaker, carrier, lowPass, ...tried } = { ...parts, ...without };
    let [energy, least] = [0, Infinity];
    for (let k = from; k <= to; k++) {
      const own = (speaker[k] ?? 0) * (tried.highPass?.[k] ?? 1);
      const carried =
        (carrier[k] ?? 0) *
        (lowPass[k] ?? 0) *
        (tried.subLowPass?.[k] ?? 1) *
        (tried.lowCut?.[k] ?? 1);
      const share = Math.min(1, (own + carried) / (target[k] ?? 1));
      energy += share;
      least = Math.min(least, share);
    }
    return { energy, least };
  };
  const open = new Float64Array(parts.speaker.length).fill(1);
  const trials: readonly (readonly [LedgerSetting, Partial<LedgerParts> | null])[] = [
    ['sub low-pass', subLowPass && { subLowPass: null }],
    ['low cut', lowCut && { lowCut: null }],
    ['crossover too low', fullRange || isLfe ? null : { lowPass: open }],
    ['crossover too high', highPass && { highPass: null }],
    ['full range', fullRange ? { lowPass: open } : null],
  ];
  let opener: LedgerSetting | null = null;
  let most = leastGrowth * deliver({}).energy;
  for (const [setting, without] of trials) {
    if (without === null) continue;
    const { energy, least } = deliver(without);
    if (least >= REACHED) return setting;
    if (!(energy > 0 && energy >= most)) continue;
    most = energy;
    opener = setting;
  }
  return opener;
}
