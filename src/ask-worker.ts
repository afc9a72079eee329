/**
 * Sends a worker one order and waits for its one answer; null when `signal` stopped it or it failed.
 * Whether the worker is of further use is for the caller to say: after a null it is not.
 */
export function askWorker<Answer>(
  worker: Worker,
  order: unknown,
  signal: AbortSignal,
): Promise<Answer | null> {
  return new Promise((resolve) => {
    const finish = (answer: Answer | null): void => {
      signal.removeEventListener('abort', abort);
      resolve(answer);
    };
    const abort = (): void => finish(null);
    if (signal.aborted) return abort();
    signal.addEventListener('abort', abort);
    worker.onmessage = ({ data }: MessageEvent<Answer | null>) => finish(data);
    worker.onerror = (event) => {
      event.preventDefault();
      finish(null);
    };
    worker.postMessage(order);
  });
}
