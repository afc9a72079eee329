import { msg } from '@lit/localize';
import { trouble, type Trouble } from '../../trouble';
import type { Prompt } from '../bench';
import type { Desk } from '../desk';

/** Where a run waits for the tuner's hands. */
export interface PromptGate {
  /** Shows the prompt until the tuner goes on (null) or stops (a trouble of kind 'stopped'). */
  ask(prompt: Prompt, signal: AbortSignal): Promise<Trouble | null>;
  /** The tuner has done it; of no effect when nothing waits. */
  open(): void;
}

/** A gate whose prompts are shown on the desk. */
export function createPromptGate(desk: Desk): PromptGate {
  let goOn: () => void = () => undefined;
  return {
    open: () => goOn(),
    ask: (prompt, signal) =>
      new Promise((resolve) => {
        const leave = (result: Trouble | null): void => {
          goOn = () => undefined;
          signal.removeEventListener('abort', stop);
          resolve(result);
        };
        const stop = (): void => leave(stopped());
        if (signal.aborted) return resolve(stopped());
        signal.addEventListener('abort', stop);
        goOn = () => leave(null);
        desk.set({ activity: { kind: 'waiting', prompt }, mic: null });
      }),
  };
}

const stopped = () =>
  trouble(
    'stopped',
    msg(
      'Stopped before the next part. What was played before is kept; the speakers still missing can be played later.',
    ),
  );
