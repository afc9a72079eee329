import type { LedgerLine } from '../../../dsp/bass/bass-ledger';
import { ledgerGrid } from '../../../dsp/bass/ledger-curves';

const grid = ledgerGrid();
/** Ends of the ledger, Hz. */
const low = grid[0] ?? 20;
const high = grid.at(-1) ?? 300;

/** Who plays most of a stretch of a channel's bass; 'none' above the end of LFE. */
export interface LedgerStretch {
  readonly who: 'own' | 'carried' | 'nobody' | 'none';
  readonly lowHz: number;
  readonly highHz: number;
}

/**
 * Where a channel's bass goes, from 20 to 300 Hz without a hole: to who plays most of it, in gaps to
 * nobody.
 */
export function ledgerStretches(
  { name, own, carried, gaps }: LedgerLine,
  lfeHz: number,
): LedgerStretch[] {
  const stretches: LedgerStretch[] = [];
  for (const [k, hz] of grid.entries()) {
    const lost = gaps.some((gap) => hz >= gap.lowHz && hz <= gap.highHz);
    const over = name === 'LFE' && hz > lfeHz * (1 + 1e-9);
    const mostly = (own[k] ?? 0) >= (carried[k] ?? 0) ? 'own' : 'carried';
    const who = over ? 'none' : lost ? 'nobody' : mostly;
    const last = stretches.at(-1);
    const from = k === 0 ? low : Math.sqrt(hz * (grid[k - 1] ?? hz));
    const to = k + 1 === grid.length ? high : Math.sqrt(hz * (grid[k + 1] ?? hz));
    if (last?.who === who) stretches[stretches.length - 1] = { ...last, highHz: to };
    else stretches.push({ who, lowHz: from, highHz: to });
  }
  return stretches;
}

/** How far along the bar a frequency stands, 0 to 1. */
export function alongBar(hz: number): number {
  const along = Math.log(hz / low) / Math.log(high / low);
  return Math.max(0, Math.min(1, along));
}
