import { proposeSettings } from '../proposal/propose-settings';
import type { Proposal } from '../proposal/proposal';
import { joinOnce } from '../reading/join-once';
import type { Readings } from '../reading/reading';
import type { TogetherOrder } from '../reading/rolloff-together';
import { segmentsToRepeat } from '../reading/segments-to-repeat';
import type { ChannelLabel, Layout } from '../system/channel';
import { placedLayout } from '../system/declared-system';
import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';
import type { BenchState } from './bench';
import { deriveProofTakes } from './derive-proof';
import type { SessionDocument } from './document';
import { ordersTogether } from './orders-together';
import { stillTogether, unreadTogether } from './still-together';
import { proposalTerms, proposesAlike, proposesAlikeButForChoices } from './proposal-terms';
import { takesHere } from './take-record';

/** Fills in what follows from the document; reuses what did not change. */
export function deriveState(state: BenchState, before: BenchState | null): BenchState {
  const layout = layoutNow(state, before);
  const orders = ordersTogether(state.document, layout);
  const next = { ...state, layout, together: stillTogether(state.together, orders) };
  return withProof(deriveProposal(next, orders, before), before);
}

/** The takes to prove by that follow from a state; a proof stands as long as they are the same. */
function withProof(state: BenchState, before: BenchState | null): BenchState {
  const proving = deriveProofTakes(state, before && { ground: before, proving: before.proving });
  const proof = before && proving === before.proving ? before.proof : null;
  return { ...state, proving, proof };
}

function deriveProposal(
  next: BenchState,
  orders: readonly TogetherOrder[],
  before: BenchState | null,
): BenchState {
  const readings = readingsOf(next.document);
  if (!readings) return { ...next, readings: null, proposal: null, toRepeat: [] };
  const sameReadings = readings === before?.readings;
  const toRepeat = sameReadings ? before.toRepeat : toRepeatOf(readings, next.layout);
  // A proposal of single roll-offs would change under the eye a moment later.
  if (unreadTogether(orders, next.together).length > 0) {
    return { ...next, readings, toRepeat, proposal: null };
  }
  const found = { ...next, readings, toRepeat };
  const same = sameReadings && next.together === before.together;
  const kept = same ? keptProposal(found, before) : null;
  // That of a new take follows whole from a worker: here its code may have still to be compiled.
  const taken = before?.document.takes.length !== next.document.takes.length;
  const follows = before !== null && (taken || before.proposal === null);
  return { ...found, proposal: kept ?? (follows ? null : proposalWithoutSums(found, readings)) };
}

/** The proposal of before, where it stands or only choices have changed since; null where neither. */
function keptProposal(next: BenchState, before: BenchState): Proposal | null {
  const { proposal } = before;
  if (!proposal || proposesAlike(next.document, before.document)) return proposal;
  // One that was never whole shows subs by arrival, which nobody chose.
  if (proposal.sums === 'coming' || !proposesAlikeButForChoices(next.document, before.document)) {
    return null;
  }
  return { ...proposal, sums: 'outdated' };
}

/** Whether a proposal can be made that is not there. */
export function lacksProposal({
  document,
  layout,
  together,
  readings,
  proposal,
}: BenchState): boolean {
  if (!readings || proposal) return false;
  return unreadTogether(ordersTogether(document, layout), together).length === 0;
}

/** What can be proposed at once; the sums follow from a worker, see Desk. Null where there is nothing. */
export function proposalWithoutSums(
  { document, layout, together }: BenchState,
  readings: Readings,
): Proposal | null {
  const terms = proposalTerms(document, readings, layout, together);
  const options = { ...terms.options, sums: 'later' } as const;
  const proposal = proposeSettings(readings, layout, terms.processor, options);
  return isTrouble(proposal) ? null : proposal;
}

/** The layout with its speakers where the document has them. */
function layoutNow({ document, layout }: BenchState, before: BenchState | null): Layout {
  const { system } = document;
  const same = before?.document.system === system && before.layout.name === layout.name;
  if (same) return before.layout;
  const nominal = layoutFromName(layout.name);
  return isTrouble(nominal) ? layout : placedLayout(nominal, system);
}

/** Damaged speakers, and those that a take never came to because it ended early; in layout order. */
function toRepeatOf(readings: Readings, layout: Layout): ChannelLabel[] {
  const damaged = new Set(segmentsToRepeat(readings));
  const read = new Set(readings.channels.map(({ channel }) => channel));
  return layout.channels
    .map(({ label }) => label)
    .filter((label) => damaged.has(label) || !read.has(label));
}

/** The takes of this position and layout, joined; the very readings of before when they are the same. */
function readingsOf(document: SessionDocument): Readings | null {
  const takes = readTakes(document);
  return takes.length === 0 ? null : joinOnce(takes);
}

function readTakes(document: SessionDocument): Readings[] {
  return takesHere(document).flatMap(({ readings, outdated }) =>
    readings && !outdated ? [readings] : [],
  );
}
