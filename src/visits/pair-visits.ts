import type { SessionDocument } from '../session/document';
import type { Layout } from '../system/channel';
import { matchTakes } from './compare-takes';
import { pairPosition, visitLayout, type PairedPosition } from './pair-positions';
import type { VisitFinding } from './visits';

/** Two sessions side by side. */
export interface PairedVisits {
  readonly layout: Layout;
  /** Of the earlier session. */
  readonly other: Layout;
  /** Places of the microphone that can be compared, in the order of takes. */
  readonly pairs: readonly PairedPosition[];
  /** Why other takes cannot be compared. */
  readonly findings: readonly VisitFinding[];
}

/**
 * Lays a session beside an earlier one, place by place. Throws RangeError for a session whose layout
 * has no meaning.
 */
export function pairVisits(now: SessionDocument, before: SessionDocument): PairedVisits {
  const [layout, other] = [visitLayout(now), visitLayout(before)];
  const { pairs, findings } = matchTakes(now, before);
  return {
    layout,
    other,
    pairs: pairs.map((pair) => pairPosition(layout, other, pair.now, pair.before)),
    findings,
  };
}
