import { msg } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../../trouble';

/** The end of a take, expected or not. The first reason stands. */
export interface TakeEnding {
  /** Why the take ended before its time; null while it runs and after a good end. */
  readonly reason: Trouble | null;
  /** Whether it is over, well or not. */
  readonly over: boolean;
  /** Ends the take: everything held is closed before this returns. */
  end(reason: Trouble): void;
  /** Closes everything held after a good end. */
  finish(): void;
  /** Runs `action` when the take is over, however it ends; at once when it already is. */
  atEnd(action: () => void): void;
  /** The value, or null as soon as the take is over. */
  until<T>(promise: Promise<T>): Promise<T | null>;
  /** Waits on the wall clock; returns early when the take is over. */
  sleep(seconds: number): Promise<void>;
  /** A resource that is closed when the take is over, even one that opens after that. */
  hold<T>(opening: Promise<T | Trouble>, close: (resource: T) => void): Promise<T | Trouble | null>;
}

/** A take that runs until someone ends or finishes it. */
export function createTakeEnding(): TakeEnding {
  const actions = new Set<() => void>();
  let over = false;
  let reason: Trouble | null = null;
  const finish = (): void => {
    over = true;
    for (const action of [...actions].reverse()) action();
    actions.clear();
  };
  const atEnd = (action: () => void): void => {
    if (over) action();
    else actions.add(action);
  };
  const until = async <T>(promise: Promise<T>): Promise<T | null> => {
    let leave: () => void = () => undefined;
    const ended = new Promise<null>((resolve) => (leave = () => resolve(null)));
    atEnd(leave);
    const first = await Promise.race([promise, ended]);
    actions.delete(leave);
    return over ? null : first;
  };
  return {
    get reason() {
      return reason;
    },
    get over() {
      return over;
    },
    end(why) {
      if (over) return;
      reason = why;
      finish();
    },
    finish,
    atEnd,
    until,
    async sleep(seconds) {
      await until(new Promise((resolve) => setTimeout(resolve, seconds * 1000)));
    },
    hold(opening, close) {
      const held = opening.then((resource) => {
        if (!isTrouble(resource)) atEnd(() => close(resource));
        return resource;
      });
      return until(held);
    },
  };
}

/** Ends the take when its signal says stop or the page is hidden, now or later. */
export function watchPage(ending: TakeEnding, signal: AbortSignal): void {
  const stop = (): void => {
    ending.end(
      trouble('stopped', msg('The take or the noise was stopped. It can be started again.')),
    );
  };
  const hide = (): void => {
    if (document.visibilityState !== 'hidden') return;
    const sentence = msg(
      'The sound ended because this page was hidden, where browsers starve it. Keep the page in view and start again.',
    );
    ending.end(trouble('hidden', sentence));
  };
  signal.addEventListener('abort', stop);
  document.addEventListener('visibilitychange', hide);
  ending.atEnd(() => {
    signal.removeEventListener('abort', stop);
    document.removeEventListener('visibilitychange', hide);
  });
  if (signal.aborted) stop();
  hide();
}
