import { practiceRig } from '../../../src/rig/practice';
import { practiceSeat } from '../../../src/session/practice-seat';
import type { BenchParts } from '../../../src/session/bench-parts';
import type { SessionBench } from '../../../src/session/session-bench';
import { makeBench, until } from './make-bench';

/** A bench in a practice room whose positions are different places in it. */
export function benchInRoom(seed: number, layout: string, changes: Partial<BenchParts> = {}) {
  const made = makeBench(
    {
      makeRig: (session, of) =>
        Promise.resolve(practiceRig({ layout: of, seed, seat: practiceSeat(session.position) })),
      ...changes,
    },
    { layout, practice: { seed, hidden: null, gainDb: 0, slips: [] } },
  );
  return made;
}

/** Runs a take at so many seats, and waits for what is read of them together. */
export async function takeAtSeats(bench: SessionBench, seats: number): Promise<void> {
  for (let seat = 1; seat <= seats; seat++) {
    if (seat > 1) bench.setPosition({ name: `Seat ${seat}`, kind: 'seat' });
    await bench.startTake();
  }
  await until(bench, ({ together }) => {
    const [first] = together;
    return first !== undefined && new Set(first.order.heard.map((one) => one.seat)).size === seats;
  });
}
