import type { ReactiveControllerHost } from 'lit';
import type { Late } from '../../src/late';
import { isTrouble, type Trouble } from '../../src/trouble';

/** What to show while something may still be on its way. */
export interface LateView<Id extends string> {
  /** What is asked for once it is there; until then what was shown before, if anything was. */
  readonly here: Id;
  /** Whether `here` can be drawn. */
  readonly there: boolean;
  /** Why it cannot. */
  readonly trouble: Trouble | null;
}

/**
 * Holds what an element shows until the thing that is asked for next has been loaded, so that
 * nothing is ever shown half. Things without a part in `parts` are always there.
 */
export class LateController<Id extends string> {
  private readonly host: Pick<ReactiveControllerHost, 'requestUpdate'>;
  private readonly parts: Readonly<Partial<Record<Id, Late<object>>>>;
  private shown: Id | null = null;
  private loading: Id | null = null;
  private failed: { readonly id: Id; readonly trouble: Trouble } | null = null;

  constructor(
    host: Pick<ReactiveControllerHost, 'requestUpdate'>,
    parts: Readonly<Partial<Record<Id, Late<object>>>>,
  ) {
    this.host = host;
    this.parts = parts;
  }

  /** To be asked each time the element is drawn; begins to load what is not there. */
  show(asked: Id): LateView<Id> {
    const part = this.parts[asked] ?? null;
    if (part === null || part.now !== null) {
      this.shown = asked;
      this.failed = null;
      return { here: asked, there: true, trouble: null };
    }
    if (this.failed?.id === asked) {
      return { here: asked, there: false, trouble: this.failed.trouble };
    }
    this.failed = null;
    if (this.loading !== asked) void this.load(asked, part);
    return { here: this.shown ?? asked, there: this.shown !== null, trouble: null };
  }

  /** Tries once more to load what failed; until then that it failed stays shown. */
  again(): void {
    const id = this.failed?.id ?? null;
    const part = id === null ? null : (this.parts[id] ?? null);
    if (id !== null && part !== null) void this.load(id, part);
  }

  private async load(id: Id, part: Late<object>): Promise<void> {
    this.loading = id;
    const loaded = await part.load();
    if (this.loading !== id) return;
    this.loading = null;
    this.failed = isTrouble(loaded) ? { id, trouble: loaded } : null;
    this.host.requestUpdate();
  }
}
