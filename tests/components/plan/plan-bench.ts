import type { SessionDocument } from '../../../src/session/document';
import {
  nothingDeclared,
  placedLayout,
  type DeclaredPlace,
  type DeclaredSystem,
} from '../../../src/system/declared-system';
import type { ChannelLabel } from '../../../src/system/channel';
import { FakeBench, layoutOf } from '../fake-bench';

/** A bench whose speakers stand where its document has them, as the real one's do. */
export class PlanBench extends FakeBench {
  constructor(name = '5.1', system: Partial<DeclaredSystem> = {}) {
    super(name);
    this.change('Declare', (document) => ({
      ...document,
      system: { ...nothingDeclared, ...system },
    }));
    this.calls.length = 0;
  }

  override change(name: string, change: (document: SessionDocument) => SessionDocument): void {
    super.change(name, change);
    const { layout, document } = this.state;
    this.set({ layout: placedLayout(layoutOf(layout.name), document.system) });
  }

  get system(): DeclaredSystem {
    return this.state.document.system;
  }

  place(label: ChannelLabel): DeclaredPlace | undefined {
    return this.system.places[label];
  }

  /** A take runs: nothing on the plan may change. */
  runTake(): void {
    this.set({ activity: { kind: 'reading', progress: 0.5, secondsLeft: null, channels: [] } });
  }
}
