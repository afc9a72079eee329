import { LocaleMap } from '../../../src/locale/locale-map';
import type { BenchState } from '../../../src/session/bench';
import type { SessionDocument } from '../../../src/session/document';
import { compareVisits } from '../../../src/visits/compare-visits';
import { pairVisits, type PairedVisits } from '../../../src/visits/pair-visits';
import type { VisitComparison } from '../../../src/visits/visits';

/** What the screens show of two visits. */
export interface Compared {
  readonly earlier: SessionDocument;
  readonly paired: PairedVisits;
  readonly comparison: VisitComparison;
}

const kept = new LocaleMap<SessionDocument, Compared>();

/**
 * The session on the bench beside the earlier one that was chosen; null while none is. The same as
 * long as both documents are the same: the level moves many times a second.
 */
export function comparedVisits({ document, sessions: { earlier } }: BenchState): Compared | null {
  if (!earlier) return null;
  const known = kept.get(document);
  if (known?.earlier === earlier) return known;
  const paired = pairVisits(document, earlier);
  const made = { earlier, paired, comparison: compareVisits(document, earlier, paired) };
  kept.set(document, made);
  return made;
}
