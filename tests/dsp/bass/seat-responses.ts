import { bassGrid, type SeatTransfers, type Transfer } from '../../../dsp/bass/transfer';

export const hz = bassGrid();

/** An arrival of a strength at a delay. */
export interface Arrival {
  readonly seconds: number;
  readonly gain: number;
}

/** Response of a few arrivals, flat each: Σ g e^(−2πifτ). */
export function arrivals(list: readonly Arrival[]): Transfer {
  const sum = (part: (turn: number) => number): Float64Array =>
    hz.map((f) =>
      list.reduce((total, { seconds, gain }) => {
        return total + gain * part(-2 * Math.PI * f * seconds);
      }, 0),
    );
  return { re: sum(Math.cos), im: sum(Math.sin) };
}

/** A source whose direct sound comes to a few seats at these delays. */
export function directSound(delays: readonly number[]): SeatTransfers {
  return delays.map((seconds) => arrivals([{ seconds, gain: 1 }]));
}

/** A source in an invented room: its direct sound and falling echoes within 0.15 s. */
export function echoes(random: () => number, seats: number, direct: number): SeatTransfers {
  return Array.from({ length: seats }, () => {
    const list = [{ seconds: direct + 0.003 * random(), gain: 1 }];
    for (let n = 0; n < 25; n++) {
      const later = 0.15 * random();
      list.push({
        seconds: direct + later,
        gain: (random() < 0.5 ? -0.7 : 0.7) * Math.exp(-25 * later) * random(),
      });
    }
    return arrivals(list);
  });
}
