import { msg } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import { createNoiseEngine } from './noise-engine';
import type { NoiseAnswer, NoiseOrder } from './noise-orders';

/** The way to the analysis of live noise. */
export interface NoiseHelp {
  order(order: NoiseOrder): void;
  end(): void;
}

/** Starts the analysis in a worker; where there are none it runs here, at once. */
export function noiseInWorker(onAnswer: (answer: NoiseAnswer) => void): NoiseHelp {
  if (typeof Worker === 'undefined') return noiseHere(onAnswer);
  const worker = withLocale(
    new Worker(new URL('./noise-worker.ts', import.meta.url), { type: 'module' }),
  );
  worker.onmessage = (event: MessageEvent<NoiseAnswer>) => onAnswer(event.data);
  worker.onerror = (event) => {
    event.preventDefault();
    onAnswer({ kind: 'failed', why: event.message || msg('its worker could not start') });
  };
  return {
    order: (order) => worker.postMessage(order),
    end: () => {
      worker.onmessage = null;
      worker.terminate();
    },
  };
}

function noiseHere(onAnswer: (answer: NoiseAnswer) => void): NoiseHelp {
  let ended = false;
  const obey = createNoiseEngine((answer) => {
    if (!ended) onAnswer(answer);
  });
  return {
    order(order) {
      if (ended) return;
      try {
        obey(order);
      } catch (error) {
        onAnswer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
      }
    },
    end: () => {
      ended = true;
    },
  };
}
