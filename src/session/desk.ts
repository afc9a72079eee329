import { onLocaleChange } from '../locale/locale-in-force';
import { msg, str } from '@lit/localize';
import { practiceRoomName } from '../rig/practice-room-name';
import { layoutFromName } from '../system/layout';
import type { MissingSetting, Proposal } from '../proposal/proposal';
import { isTrouble, trouble, type Trouble } from '../trouble';
import type { BenchState } from './bench';
import type { BenchParts } from './bench-parts';
import type { SessionDocument } from './document';
import { deriveState, lacksProposal, proposalWithoutSums } from './derive-state';
import { keepAlike } from './follow/keep-alike';
import { followDeclared } from './follow-declared';
import { followWiring } from './follow-wiring';
import { forgetsClimb } from './forgets-climb';
import { Histories } from './history/histories';
import { holdInHand } from './shelf/hold-in-hand';
import type { RunName } from './run-names';
import { proposalTerms } from './proposal-terms';

export type Work = (signal: AbortSignal) => Promise<Trouble | null>;

/**
 * What the bench's helpers share: the one state, the way to change and save it, and the one thing
 * that may run.
 */
export class Desk {
  state: BenchState;
  readonly parts: BenchParts;
  readonly #listeners = new Set<() => void>();
  readonly histories = new Histories();
  #running: AbortController | null = null;
  #saving: Promise<void> = Promise.resolve();
  /** The document that was saved last, as long as nothing is left that could not be saved. */
  #saved: SessionDocument | null = null;
  /** Whether the store would not take something since it last took everything. */
  #refused = false;
  #summing: AbortController | null = null;

  constructor(parts: BenchParts, first: BenchState) {
    this.parts = { ...parts, store: holdInHand(parts.store) };
    this.state = deriveState(first, null);
    void this.#addSums();
    onLocaleChange(() => this.#sayAnew());
  }

  get busy(): boolean {
    return this.#running !== null;
  }

  /** Why nothing may be changed or started now; null when it may. */
  get closed(): Trouble | null {
    if (this.busy) return busy();
    // Each refusal is a trouble of its own: screens put back what was entered.
    return this.state.saved === 'elsewhere' ? { ...elsewhere() } : null;
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
    const before = this.state;
    this.set(deriveState({ ...before, ...changes }, before));
    this.#addSumsAfter(before);
  }

  /** Makes anew what holds sentences, in the locale now in force. */
  #sayAnew(): void {
    const { abilities: known, document } = this.state;
    const abilities =
      known?.kind === 'practice'
        ? { ...known, name: practiceRoomName(document.practice.seed) }
        : known;
    this.set(deriveState({ ...this.state, abilities }, null));
    void this.#addSums();
  }

  /** Shows a trouble until it is dismissed or replaced. */
  raise(problem: Trouble): void {
    this.set({ trouble: problem });
  }

  /**
   * Changes the document and saves it; a page that only follows another changes nothing. Undo shows
   * the `name`; without one the change belongs to what runs, and with null to what came before it.
   */
  change(change: (document: SessionDocument) => SessionDocument, name?: string | null): void {
    if (this.state.saved === 'elsewhere') return this.raise({ ...elsewhere() });
    const before = this.state.document;
    const changed = followDeclared(before, change(before));
    const document = followWiring(before, changed);
    if (document === before) return;
    this.histories.note(before, document, name);
    this.#show(document, this.state.layout);
  }

  /** Takes back the newest change, or brings back the one taken back last; not while one runs. */
  walkHistory(way: 'undo' | 'redo'): void {
    const { closed } = this;
    if (closed) return this.raise(closed);
    const before = this.state.document;
    const document = this.histories.walk(way, before);
    if (document === null) return;
    const layout = layoutFromName(document.layout);
    if (isTrouble(layout)) return this.raise(layout);
    const abilities = before.rig === document.rig ? this.state.abilities : null;
    this.set({ abilities, trouble: null });
    this.#show(document, layout);
  }

  /** Puts another session on the desk; the one before stays in the store, or in hand. */
  adopt(document: SessionDocument): void {
    this.set(this.#stateWith(document));
    void this.#addSums();
  }

  /** Shows a session as the page that writes has saved it; nothing once this page writes itself. */
  follow(stored: SessionDocument): void {
    if (this.state.saved !== 'elsewhere') return;
    const before = this.state;
    const document = keepAlike(before.document, stored);
    if (document === before.document) return;
    const layout = layoutFromName(document.layout);
    if (isTrouble(layout)) return this.raise(layout);
    const known = document.id === before.document.id ? before : null;
    this.set(deriveState({ ...before, document, layout, climbed: null }, known));
    void this.#addSums();
  }

  /** Why a session from outside cannot lie on the desk: its readings contradict it. Null when it can. */
  refuses(document: SessionDocument): Trouble | null {
    try {
      this.#stateWith(document);
      return null;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      return trouble(
        'bad-file',
        msg(str`This session contradicts itself: ${why}. Save it again where it was made.`),
      );
    }
  }

  /** Shows that the store would not take what is on the desk, and why. */
  showUnsaved(problem: Trouble): void {
    this.#saved = null;
    this.#refused = true;
    this.set({ saved: 'failed', trouble: problem });
  }

  /** Resolves when everything changed so far is saved, or could not be. */
  async settle(): Promise<void> {
    await this.#saving;
  }

  /** Runs one thing; refuses while another runs. What throws becomes a trouble about `what`. Its
   * changes are one step of the history. */
  async run({ what, step }: RunName, work: Work): Promise<void> {
    const { closed } = this;
    if (closed) return this.raise(closed);
    this.#running = new AbortController();
    this.histories.beginRun(step);
    this.set({ trouble: null });
    try {
      const problem = await work(this.#running.signal);
      if (problem) this.raise(problem);
    } catch (error) {
      this.raise(unfinished(what, error));
    } finally {
      this.#running = null;
      this.histories.endRun();
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

  #stateWith(document: SessionDocument): BenchState {
    const layout = layoutFromName(document.layout);
    if (isTrouble(layout)) throw new RangeError(layout.sentence);
    const cleared = { abilities: null, climbed: null, trouble: null, mic: null, soundLevel: null };
    const history = this.histories.namesOf(document.id);
    const state = { ...this.state, ...cleared, document, layout, history, saved: 'saved' } as const;
    return deriveState(state, null);
  }

  #show(document: SessionDocument, layout: BenchState['layout']): void {
    const before = this.state;
    const climbed = forgetsClimb(before.document, document) ? null : before.climbed;
    const history = this.histories.namesOf(document.id);
    const next = { ...before, document, layout, climbed, history, saved: 'saving' } as const;
    this.set(deriveState(next, before));
    this.#save();
    this.#addSumsAfter(before);
  }

  #addSumsAfter(before: BenchState): void {
    const { proposal } = this.state;
    if (!proposal || proposal !== before.proposal) void this.#addSums();
  }

  /** Makes the first proposal, or completes one whose sums are still to come; a newer one breaks it off. */
  async #addSums(): Promise<void> {
    this.#summing?.abort();
    const { proposal, document, readings, layout } = this.state;
    if (!readings || proposal?.sums === 'there') return;
    if (!proposal && !lacksProposal(this.state)) return;
    const summing = new AbortController();
    this.#summing = summing;
    const terms = proposalTerms(document, readings, layout, this.state.together);
    const whole = await this.parts.propose(terms, summing.signal);
    if (summing.signal.aborted || this.state.proposal !== proposal) return;
    this.set({ proposal: whole ?? sumsFailed(proposalWithoutSums(this.state, readings)) });
  }

  /**
   * Tries once more to save what could not be saved, unless something runs; it was said already, so
   * that nothing is said when it cannot be saved this time.
   */
  saveAgain(): void {
    if (this.busy || this.state.saved !== 'failed') return;
    const here = this.state.document;
    this.#saving = this.#saving.then(async () => {
      if (this.state.document !== here || this.state.saved !== 'failed') return;
      if ((await this.parts.store.save(here)) === null) this.#showSaved(here);
    });
  }

  #save(): void {
    const changed = this.state.document;
    this.#saving = this.#saving.then(async () => {
      const here = this.state.document;
      // Another session may lie on the desk by now: each is saved as it was left.
      const document = here.id === changed.id ? here : changed;
      // Of changes that come faster than they are saved, the newest is saved once.
      const problem =
        document === this.#saved ? null : await this.parts.store.save(document, document === here);
      if (problem === null) return this.#showSaved(document);
      this.#refused = true;
      if (document !== here) return this.raise(problem);
      if (document === this.state.document) this.showUnsaved(problem);
    });
  }

  /** What said that there was no room says so no longer once everything is saved. */
  #showSaved(document: SessionDocument): void {
    this.#saved = document;
    if (document !== this.state.document) return;
    const { trouble } = this.state;
    const over = this.#refused && trouble?.trouble === 'storage';
    this.#refused = false;
    this.set({ saved: 'saved', trouble: over ? null : trouble });
  }
}

function sumsFailed(proposal: Proposal | null): Proposal | null {
  const failed: MissingSetting = {
    channel: null,
    what: 'sub alignment',
    sentence: msg('The sums could not be worked out: the subs go by arrival.'),
    action: msg('Reload the page.'),
  };
  return proposal && { ...proposal, sums: 'there', missing: [...proposal.missing, failed] };
}

function unfinished(what: string, error: unknown): Trouble {
  if (isTrouble(error)) return error;
  const why = error instanceof Error ? error.message : String(error);
  return trouble(
    'failed',
    msg(str`${what} could not be finished: ${why}. Nothing in the session was lost; run it again.`),
  );
}

const busy = () =>
  trouble('failed', msg('Something is running: stop it first (Esc), then change this.'));

const elsewhere = () =>
  trouble(
    'storage',
    msg(
      'Nothing was changed: Leadline is open in another tab. Change it there, or close that tab to go on here.',
    ),
  );
