import { defaultProcessorSteps } from '../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../src/proposal/propose-settings';
import type { Readings } from '../../src/reading/reading';
import type { SessionDocument } from '../../src/session/document';
import type { Layout } from '../../src/system/channel';
import { isTrouble } from '../../src/trouble';
import { FakeBench } from './fake-bench';

/** A bench that holds readings and what follows from them. */
export function benchWith(
  layout: Layout,
  readings: Readings,
  changes: Partial<SessionDocument> = {},
): FakeBench {
  const bench = new FakeBench('5.2.4', { layout });
  const document = {
    ...bench.state.document,
    layout: layout.name,
    processor: defaultProcessorSteps,
    ...changes,
  };
  const proposal = proposeSettings(readings, layout, document.processor);
  if (isTrouble(proposal)) throw new RangeError(proposal.sentence);
  bench.set({ document, readings, proposal });
  return bench;
}
