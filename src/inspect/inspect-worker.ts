import '../locale/hear-locale';
import type { Trouble } from '../trouble';
import { createAnswerer } from './answer-request';
import { failed } from './inspect-troubles';
import type { InspectAnswer, InspectRequest } from './inspection';
import type { TakeSound } from './take-sound';

/** What the page sends. */
export type InspectMessage =
  | { readonly kind: 'take'; readonly sound: TakeSound }
  | { readonly kind: 'ask'; readonly id: number; readonly request: InspectRequest };

/** What the worker answers. */
export interface InspectReply {
  readonly id: number;
  readonly answer: InspectAnswer | Trouble;
}

const answerer = createAnswerer();

self.onmessage = (event: MessageEvent<InspectMessage>): void => {
  const message = event.data;
  if (message.kind === 'take') return answerer.add(message.sound);
  const reply = (answer: InspectAnswer | Trouble): void =>
    self.postMessage({ id: message.id, answer } satisfies InspectReply);
  try {
    reply(answerer.answer(message.request));
  } catch (error) {
    // A throw here would reach the page without the question it belongs to.
    reply(failed(error instanceof Error ? error.message : String(error)));
  }
};
