import { proposeSettings } from '../../../src/proposal/propose-settings';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import type { Readings } from '../../../src/reading/reading';
import type { SessionDocument, TakeRecord } from '../../../src/session/document';
import { proposalTerms } from '../../../src/session/proposal-terms';
import type { Layout } from '../../../src/system/channel';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { FakeBench } from '../fake-bench';
import { sampleTake } from '../sample-session';
import { bassReadings } from './invented-bass';

/** A bench that proposes anew after every change, at once. */
export class ProposingBench extends FakeBench {
  constructor(layout: Layout, readings: Readings, changes: Partial<SessionDocument> = {}) {
    super('5.2.4', { layout, readings });
    const { document } = this.state;
    this.set({
      document: {
        ...document,
        layout: layout.name,
        processor: defaultProcessorSteps,
        ...changes,
      },
    });
    this.propose();
  }

  override change(name: string, change: (document: SessionDocument) => SessionDocument): void {
    super.change(name, change);
    this.propose();
  }

  private propose(): void {
    const { document, readings, layout } = this.state;
    if (!readings) return;
    const { processor, options } = proposalTerms(document, readings, layout, this.state.together);
    const proposal = proposeSettings(readings, layout, processor, options);
    if (isTrouble(proposal)) throw new RangeError(proposal.sentence);
    this.set({ proposal });
  }
}

/** A bench with the bass of a layout captured at so many seats. */
export function benchWithBass(
  layout: Layout,
  seats = 1,
  changes: Partial<SessionDocument> = {},
): ProposingBench {
  const takes = Array.from({ length: seats }, (_, seat): TakeRecord => ({
    ...sampleTake('5.1'),
    id: `invented take ${seat}`,
    position: { id: `seat-${seat + 1}`, name: `Seat ${seat + 1}`, kind: 'seat' },
    schedule: scheduleTake(layout),
    readings: bassReadings(layout, seat),
  }));
  return new ProposingBench(layout, bassReadings(layout), { takes, ...changes });
}
