import '../locale/hear-locale';
import { readOrder } from './read-order';
import { togetherFailed } from './reading-troubles';
import type { RolloffFinding } from './rolloff-finding';
import type { TogetherOrder } from './rolloff-together';

function answerTo(order: TogetherOrder): RolloffFinding {
  try {
    return readOrder(order);
  } catch (error) {
    return togetherFailed(error instanceof Error ? error.message : String(error));
  }
}

self.onmessage = ({ data }: MessageEvent<TogetherOrder>): void => self.postMessage(answerTo(data));
