import type { ProposalChoices } from '../../src/proposal/choices';
import type { Proposal } from '../../src/proposal/proposal';
import type { Readings } from '../../src/reading/reading';
import type { Bench, BenchState } from '../../src/session/bench';
import { createMemory } from '../probe/memory';
import { choicesOf } from './choices/change-choices';

/** A proposal, and the choices it was made with. */
export interface SteadyProposal {
  readonly proposal: Proposal;
  readonly made: ProposalChoices;
}

interface Kept extends SteadyProposal {
  readonly readings: Readings;
  readonly layout: string;
}

const whole = createMemory<Kept | null>(() => null);

/**
 * The bench's proposal; while its sums are still to come, the whole one before it, so that what is
 * drawn does not jump to a setting by arrival and back. Null while there is none for this plan.
 */
export function steadyProposal(bench: Bench, state: BenchState): SteadyProposal | null {
  const { proposal, readings, layout, document } = state;
  if (!readings || proposal?.layout !== layout.name) return null;
  const before = whole.of(bench);
  if (before?.proposal === proposal) return before;
  const now: Kept = { proposal, made: choicesOf(document), readings, layout: layout.name };
  if (proposal.sums === 'there') {
    whole.keep(bench, now);
    return now;
  }
  return before?.readings === readings && before.layout === layout.name ? before : now;
}
