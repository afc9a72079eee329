import { msg } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import { isTrouble, type Trouble } from '../trouble';
import { failed, stopped } from './inspect-troubles';
import type { InspectAnswer, Inspector } from './inspection';
import type { InspectMessage, InspectReply } from './inspect-worker';
import { takesOf } from './takes-of';
import type { TakeSound } from './take-sound';

/**
 * An inspector in a worker of its own, so that the screen never waits. `load` gives the sound of a
 * take, once for each; a take whose sound is gone gives its Trouble.
 */
export function inspectInWorker(load: (takeId: string) => Promise<TakeSound | Trouble>): Inspector {
  const worker = withLocale(
    new Worker(new URL('./inspect-worker.ts', import.meta.url), { type: 'module' }),
  );
  const waiting = new Map<number, (answer: InspectAnswer | Trouble) => void>();
  const sent = new Map<string, Promise<Trouble | null>>();
  let asked = 0;
  let closed = false;
  const giveUp = (why: Trouble): void => {
    for (const answer of waiting.values()) answer(why);
    waiting.clear();
  };
  const send = (message: InspectMessage): void => worker.postMessage(message);
  const provide = (takeId: string): Promise<Trouble | null> => {
    const known = sent.get(takeId);
    if (known) return known;
    const provided = load(takeId).then((sound) => {
      if (isTrouble(sound)) return sound;
      send({ kind: 'take', sound });
      return null;
    });
    sent.set(takeId, provided);
    return provided;
  };
  worker.onmessage = (event: MessageEvent<InspectReply>) => {
    const { id, answer } = event.data;
    waiting.get(id)?.(answer);
    waiting.delete(id);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    giveUp(failed(event.message || msg('its worker could not start')));
  };
  return {
    async ask(request) {
      const missing = await Promise.all(takesOf(request).map(provide));
      const gone = missing.find((one) => one !== null);
      if (gone) return gone;
      if (closed) return stopped();
      const id = asked++;
      return new Promise((resolve) => {
        waiting.set(id, resolve);
        send({ kind: 'ask', id, request });
      });
    },
    close() {
      closed = true;
      worker.terminate();
      giveUp(stopped());
    },
  };
}
