import '../locale/hear-locale';
import { createNoiseEngine } from './noise-engine';
import type { NoiseAnswer, NoiseOrder } from './noise-orders';

const answer = (message: NoiseAnswer): void => {
  if (message.kind === 'period') self.postMessage(message, { transfer: [message.period.buffer] });
  else self.postMessage(message);
};

const obey = createNoiseEngine(answer);

// An error in here is sent: what the page's onerror would tell says less.
self.onmessage = (event: MessageEvent<NoiseOrder>): void => {
  try {
    obey(event.data);
  } catch (error) {
    answer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
};
