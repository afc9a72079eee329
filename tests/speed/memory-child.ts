import { loadTake } from './make-take';
import { readWhole } from './read-whole';

/** Bytes of the capture, the most that was in use beside it, and how far the process grew. */
export interface Memory {
  readonly capture: number;
  readonly most: number;
  readonly resident: number;
}

/** Garbage is collected and what is left counted whenever arrays of so many bytes were made. */
const everyBytes = 2 ** 17;

const [folder = '', how = ''] = process.argv.slice(2);
const collect = (globalThis as { gc?: () => void }).gc;
if (!collect) throw new Error('run this with --expose-gc');
const inUse = (): number => {
  // The first may only end a collection that was under way and counts as used what was made since.
  collect();
  collect();
  const { arrayBuffers, heapUsed } = process.memoryUsage();
  return arrayBuffers + heapUsed;
};
const take = loadTake(folder);
const before = inUse();
const residentBefore = process.memoryUsage.rss();
let most = 0;
let made = 0;
if (how === 'collect') {
  for (const name of ['Float64Array', 'Float32Array'] as const) {
    const Real = globalThis[name];
    const counting = new Proxy(Real, {
      construct(target, values: unknown[], self) {
        const array = Reflect.construct(target, values, self) as Float64Array;
        made += array.byteLength;
        if (made >= everyBytes) {
          made = 0;
          most = Math.max(most, inUse() - before);
        }
        return array;
      },
    });
    Object.assign(globalThis, { [name]: counting });
  }
}
await readWhole(take);
const { maxRSS } = process.resourceUsage();
const memory: Memory = {
  capture: take.samples.byteLength,
  most,
  resident: 1024 * maxRSS - residentBefore,
};
console.log(JSON.stringify(memory));
