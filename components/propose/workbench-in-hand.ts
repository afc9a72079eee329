import { localeInForce } from '../../src/locale/locale-in-force';
import { workbenchOf, type Workbench } from '../../src/proposal/workbench';
import type { Bench, BenchState } from '../../src/session/bench';
import { proposalTerms } from '../../src/session/proposal-terms';
import type { Readings } from '../../src/reading/reading';
import { createMemory } from '../probe/memory';

interface Kept {
  readonly key: readonly unknown[];
  readonly workbench: Workbench;
}

const kept = createMemory<Kept | null>(() => null);

/** What sums and ledger are recomputed on; made anew only when readings, plan or sheet change. */
export function workbenchInHand(bench: Bench, state: BenchState, readings: Readings): Workbench {
  const { document, layout, together } = state;
  const { processor, sheet, takes } = document;
  const key = [localeInForce(), readings, layout, processor, sheet, takes, together];
  const before = kept.of(bench);
  if (before && key.every((value, n) => value === before.key[n])) return before.workbench;
  const terms = proposalTerms(document, readings, layout, together);
  const workbench = workbenchOf(readings, layout, terms.processor, terms.options);
  kept.keep(bench, { key, workbench });
  return workbench;
}
