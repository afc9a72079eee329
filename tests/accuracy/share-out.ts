import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { bundleForNode } from '../bundle-for-node';
import type { Answer, Order, Result } from './child';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/**
 * Measures all rooms, one child process a core, and gives them in the order asked for. Rejects at
 * the first room that fails.
 */
export async function shareOut(
  orders: readonly Order[],
  onRoom: (done: number) => void,
): Promise<Result[]> {
  const folder = here('../.out/accuracy');
  await bundleForNode(here('.'), folder, { child: here('./child.ts') });
  const results: (Result | undefined)[] = orders.map(() => undefined);
  let next = 0;
  let done = 0;
  const work = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const child = fork(`${folder}/child.js`);
      let current = -1;
      const give = (): void => {
        current = next++;
        const order = orders[current];
        if (order) child.send(order);
        else child.disconnect();
      };
      child.on('message', (answer: Answer) => {
        if ('failure' in answer) {
          child.kill();
          reject(new Error(`${JSON.stringify(orders[current])}: ${answer.failure}`));
          return;
        }
        results[current] = answer.result;
        onRoom(++done);
        give();
      });
      child.on('error', reject);
      child.on('exit', (code) => {
        if (code === 0) resolve();
        else reject(new Error(`a child process ended with ${code ?? 'a signal'}`));
      });
      give();
    });
  const children = Math.min(availableParallelism(), orders.length);
  await Promise.all(Array.from({ length: children }, work));
  return results.flatMap((result) => result ?? []);
}
