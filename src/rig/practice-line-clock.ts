import type { CapturedBlock } from './port';
import { practiceRate } from './practice-clock';
import type { LineSimulation } from './practice-line-sound';

const blockFrames = 2400;
/** Seconds that may be caught up with; more, and frames are lost as on a real recorder. */
const mostBehind = 2;

/**
 * Lets a simulated line run in real time, `speed` times faster, in blocks of 50 ms. Returns the
 * way to end it.
 */
export function runLine(
  simulation: LineSimulation,
  speed: number,
  onBlock: (block: CapturedBlock) => void,
): () => void {
  const began = performance.now();
  let given = 0;
  const timer = setInterval(
    () => {
      const due = ((performance.now() - began) / 1000) * speed * practiceRate;
      const lost = Math.floor((due - given) / blockFrames) * blockFrames;
      if (lost > mostBehind * speed * practiceRate) {
        simulation.skip(lost);
        given += lost;
      }
      while (given + blockFrames <= due) {
        given += blockFrames;
        onBlock(simulation.next(blockFrames));
      }
    },
    blockFrames / (practiceRate / 1000) / speed,
  );
  return () => clearInterval(timer);
}
