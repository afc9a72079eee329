import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { RoomFigures } from './figures';
import type { RoomAnswer, RoomOrder } from './room-child';

const childPath = fileURLToPath(new URL('./room-child.ts', import.meta.url));

/**
 * Measures all rooms, one child process a core, and gives them in the order asked for. Rejects at
 * the first room that fails.
 */
export async function measureRooms(
  orders: readonly RoomOrder[],
  onRoom: (done: number) => void,
): Promise<RoomFigures[]> {
  const results: (RoomFigures | undefined)[] = orders.map(() => undefined);
  let next = 0;
  let done = 0;
  const work = (): Promise<void> =>
    new Promise((resolve, reject) => {
      const child = fork(childPath);
      let current = -1;
      const give = (): void => {
        current = next++;
        const order = orders[current];
        if (order) child.send(order);
        else child.disconnect();
      };
      child.on('message', (answer: RoomAnswer) => {
        if ('failure' in answer) {
          child.kill();
          reject(new Error(`${JSON.stringify(answer.order)}: ${answer.failure}`));
          return;
        }
        results[current] = answer.figures;
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
  return results.flatMap((figures) => figures ?? []);
}
