import { proposeSettings } from '../proposal/propose-settings';
import { isTrouble } from '../trouble';
import type { BenchState } from './bench';
import { takesHere } from './take-record';

/** Fills in what follows from the document: readings and proposal; reuses what did not change. */
export function deriveState(next: BenchState, before: BenchState | null): BenchState {
  const readings = takesHere(next.document).findLast((take) => take.readings)?.readings;
  if (!readings) return { ...next, readings: null, proposal: null };
  const { processor } = next.document;
  if (readings === before?.readings && processor === before.document.processor) {
    return { ...next, readings, proposal: before.proposal };
  }
  const proposal = proposeSettings(readings, next.layout, processor);
  return { ...next, readings, proposal: isTrouble(proposal) ? null : proposal };
}
