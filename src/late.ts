import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from './trouble';

/** A part of the app that is loaded when it is first needed, instead of with the page. */
export interface Late<Part> {
  /** The part once it is there; null before. */
  readonly now: Part | null;
  /** Loads it, once; after a Trouble it can be tried again. Never rejects. */
  load(): Promise<Part | Trouble>;
}

/** A part that `fetch` brings, such as `() => import('./part')`. */
export function late<Part extends object>(fetch: () => Promise<Part>): Late<Part> {
  let now: Part | null = null;
  let loading: Promise<Part | Trouble> | null = null;

  async function load(): Promise<Part | Trouble> {
    try {
      now = await fetch();
      return now;
    } catch (error) {
      return unreachable(error);
    } finally {
      loading = null;
    }
  }

  return {
    get now() {
      return now;
    },
    load: () => (now === null ? (loading ??= load()) : Promise.resolve(now)),
  };
}

/** Works with a part: at once where it is there, else as soon as it is. */
export function withLate<Part extends object, Result>(
  part: Late<Part>,
  work: (part: Part) => Promise<Result>,
): Promise<Result | Trouble> {
  if (part.now !== null) return work(part.now);
  return part
    .load()
    .then<Result | Trouble>((loaded) => (isTrouble(loaded) ? loaded : work(loaded)));
}

function unreachable(error: unknown): Trouble {
  const why = error instanceof Error ? error.message : String(error);
  return trouble(
    'failed',
    msg(
      str`This part of Leadline did not load (${why}). The network may be gone, or the server may have a newer version by now. Try again, or reload the page; saved sessions stay as they are.`,
    ),
  );
}
