import { proposeSettings } from '../proposal/propose-settings';
import { joinOnce } from '../reading/join-once';
import type { Readings } from '../reading/reading';
import type { TogetherOrder } from '../reading/rolloff-together';
import { segmentsToRepeat } from '../reading/segments-to-repeat';
import type { ChannelLabel, Layout } from '../system/channel';
import { placedLayout } from '../system/declared-system';
import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';
import type { BenchState } from './bench';
import { deriveProof } from './derive-proof';
import type { SessionDocument } from './document';
import { ordersTogether } from './orders-together';
import { stillTogether, unreadTogether } from './still-together';
import { proposalTerms, proposesAlike } from './proposal-terms';
import { takesHere } from './take-record';

/** Fills in what follows from the document; reuses what did not change. */
export function deriveState(state: BenchState, before: BenchState | null): BenchState {
  const layout = layoutNow(state, before);
  const orders = ordersTogether(state.document, layout);
  const next = { ...state, layout, together: stillTogether(state.together, orders) };
  return withProof(deriveProposal(next, orders, before), before);
}

/** The proof that follows from a state, which may rest on that of before. */
function withProof(state: BenchState, before: BenchState | null): BenchState {
  const proof = deriveProof(state, before && { ground: before, proof: before.proof });
  return proof === state.proof ? state : { ...state, proof };
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
  const same = sameReadings && next.together === before.together;
  if (same && before.proposal && proposesAlike(next.document, before.document)) {
    return { ...next, readings, toRepeat, proposal: before.proposal };
  }
  const terms = proposalTerms(next.document, readings, next.layout, next.together);
  // The sums follow from a worker; see Desk.
  const options = { ...terms.options, sums: 'later' } as const;
  const proposal = proposeSettings(readings, next.layout, terms.processor, options);
  return { ...next, readings, toRepeat, proposal: isTrouble(proposal) ? null : proposal };
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
