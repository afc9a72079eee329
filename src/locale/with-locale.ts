import { textsToSend, type Texts } from '../language/texts-in-force';
import type { Locale } from './locale';
import { localeInForce, onLocaleChange } from './locale-in-force';

/** What a page sends its workers before anything else, and after each change. */
export interface LocaleMessage {
  readonly kind: 'locale';
  readonly locale: Locale;
  /** Texts of its language, unless that is our own. */
  readonly texts: Texts | null;
}

/** Workers that may still run; one that has ended takes the message and does nothing with it. */
const told = new Set<WeakRef<Worker>>();
let follows = false;

/** A new worker that makes sentences: it hears the locale in force first, and of each change. */
export function withLocale(worker: Worker): Worker {
  if (!follows) onLocaleChange(tellAll);
  follows = true;
  tell(worker);
  told.add(new WeakRef(worker));
  return worker;
}

function tellAll(): void {
  for (const one of told) {
    const worker = one.deref();
    if (worker) tell(worker);
    else told.delete(one);
  }
}

function tell(worker: Worker): void {
  const message: LocaleMessage = { kind: 'locale', locale: localeInForce(), texts: textsToSend() };
  worker.postMessage(message);
}
