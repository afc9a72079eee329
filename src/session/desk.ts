import { isTrouble, trouble, type Trouble } from '../trouble';
import type { BenchState } from './bench';
import type { BenchParts } from './bench-parts';
import type { SessionDocument } from './document';
import { deriveState } from './derive-state';
import { followDeclared } from './follow-declared';
import { followWiring } from './follow-wiring';
import { forgetsClimb } from './forgets-climb';

export type Work = (signal: AbortSignal) => Promise<Trouble | null>;

/**
 * What the bench's helpers share: the one state, the way to change and save it, and the one thing
 * that may run.
 */
export class Desk {
  state: BenchState;
  readonly parts: BenchParts;
  readonly #listeners = new Set<() => void>();
  #running: AbortController | null = null;
  #saving: Promise<void> = Promise.resolve();

  constructor(parts: BenchParts, first: BenchState) {
    this.parts = parts;
    this.state = deriveState(first, null);
  }

  get busy(): boolean {
    return this.#running !== null;
  }

  /** Why nothing may be changed or started now; null when it may. */
  get closed(): Trouble | null {
    if (this.busy) return busy;
    return this.state.saved === 'elsewhere' ? elsewhere : null;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  set(changes: Partial<BenchState>): void {
    this.state = { ...this.state, ...changes };
    for (const listener of this.#listeners) listener();
  }

  /** Sets what other things of the state follow from. */
  derive(changes: Partial<BenchState>): void {
    this.set(deriveState({ ...this.state, ...changes }, this.state));
  }

  /** Shows a trouble until it is dismissed or replaced. */
  raise(problem: Trouble): void {
    this.set({ trouble: problem });
  }

  /** Changes the document and saves it; a page that only follows another changes nothing. */
  change(change: (document: SessionDocument) => SessionDocument): void {
    if (this.state.saved === 'elsewhere') return this.raise(elsewhere);
    const before = this.state;
    const changed = followDeclared(before.document, change(before.document));
    const document = followWiring(before.document, changed);
    if (document === before.document) return;
    const climbed = forgetsClimb(before.document, document) ? null : before.climbed;
    this.set(deriveState({ ...before, document, climbed }, before));
    this.#save();
  }

  /** Runs one thing; refuses while another runs. What throws becomes a trouble about `what`. */
  async run(what: string, work: Work): Promise<void> {
    const { closed } = this;
    if (closed) return this.raise(closed);
    this.#running = new AbortController();
    this.set({ trouble: null });
    try {
      const problem = await work(this.#running.signal);
      if (problem) this.raise(problem);
    } catch (error) {
      this.raise(unfinished(what, error));
    } finally {
      this.#running = null;
      this.set({ activity: { kind: 'idle' }, mic: null, soundLevel: null });
    }
  }

  /** For what still has to be done after a stop, such as reading what was captured by then. */
  goOn(): AbortSignal {
    this.#running = new AbortController();
    return this.#running.signal;
  }

  stop(): void {
    this.#running?.abort();
  }

  #save(): void {
    this.set({ saved: 'saving' });
    this.#saving = this.#saving.then(async () => {
      const { document } = this.state;
      const problem = await this.parts.store.save(document);
      if (document !== this.state.document) return;
      this.set({
        saved: problem ? 'failed' : 'saved',
        trouble: problem ?? this.state.trouble,
      });
    });
  }
}

function unfinished(what: string, error: unknown): Trouble {
  if (isTrouble(error)) return error;
  const why = error instanceof Error ? error.message : String(error);
  return trouble(
    'failed',
    `${what} could not be finished: ${why}. Nothing in the session was lost; run it again.`,
  );
}

const busy = trouble('failed', 'Something is running: stop it first (Esc), then change this.');

const elsewhere = trouble(
  'storage',
  'This session is open in another tab: change it there, or close that tab and reload this one.',
);
