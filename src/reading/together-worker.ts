import { readOrder, type TogetherOrder } from './rolloff-together';
import type { RolloffFinding } from './rolloff-finding';
import { togetherFailed } from './reading-troubles';

function answerTo(order: TogetherOrder): RolloffFinding {
  try {
    return readOrder(order);
  } catch (error) {
    return togetherFailed(error instanceof Error ? error.message : String(error));
  }
}

self.onmessage = ({ data }: MessageEvent<TogetherOrder>): void => self.postMessage(answerTo(data));
