import type { UpdateState, Updates } from '../../../src/offline/updates';

/** Updates that hold still; wishes for the newer version are counted. */
export class FakeUpdates implements Updates {
  state: UpdateState;
  wished = 0;
  private readonly listeners = new Set<() => void>();

  constructor(state: UpdateState) {
    this.state = state;
  }

  set(state: Partial<UpdateState>): void {
    this.state = { ...this.state, ...state };
    for (const listener of this.listeners) listener();
  }

  get listening(): number {
    return this.listeners.size;
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  takeOver(): void {
    this.wished += 1;
  }
}
