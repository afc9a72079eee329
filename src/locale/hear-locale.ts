import { putTexts } from '../language/texts-in-force';
import { setLocale } from './locale-in-force';
import type { LocaleMessage } from './with-locale';

/**
 * Imported first in a worker that `withLocale` is used on: takes the locale of the page, and keeps
 * that message from the worker's own listeners, which are added after this one.
 */
self.addEventListener('message', (event: MessageEvent<unknown>) => {
  if (!isLocaleMessage(event.data)) return;
  event.stopImmediatePropagation();
  void putTexts(event.data.texts);
  setLocale(event.data.locale);
});

function isLocaleMessage(data: unknown): data is LocaleMessage {
  return typeof data === 'object' && data !== null && 'kind' in data && data.kind === 'locale';
}
