import type { Layout } from '../../src/system/channel';
import type { Schedule } from '../../src/take/schedule';
import { scheduleTake } from '../../src/take/schedule-take';
import type { RoomQuestions } from './measure-room';

/** Sweeps of the brief takes, seconds. */
const briefSweepSeconds = 0.7;

/**
 * The reference and one more speaker of a layout, another one from room to room: a front or the
 * centre, a surround, a front height, another height. Takes of two speakers ask a room everything
 * in a tenth of a whole take's time.
 */
export function briefLayout(layout: Layout, seed: number): Layout {
  const [reference, ...others] = layout.channels;
  const kinds = [
    others.filter(({ group }) => group === 'fronts' || group === 'centre'),
    others.filter(({ kind, group }) => kind === 'bed' && group !== 'fronts' && group !== 'centre'),
    others.filter(({ group }) => group === 'front heights'),
    others.filter(({ kind, group }) => kind === 'height' && group !== 'front heights'),
  ].filter(({ length }) => length > 0);
  // Two rooms of a kind after another, as every other room has bounced front heights.
  const turn = Math.floor(seed / 2);
  const kind = kinds[turn % kinds.length] ?? [];
  const other = kind[Math.floor(turn / kinds.length) % kind.length];
  return {
    ...layout,
    channels: layout.channels.filter((channel) => channel === reference || channel === other),
  };
}

/** The reference and the subs of a layout, and what a take of them is asked for: levels alone. */
export function subLayout(layout: Layout): Layout {
  const channels = layout.channels.filter(({ kind }, index) => index === 0 || kind === 'sub');
  return { ...layout, channels };
}
export const subQuestions: RoomQuestions = { skewAtDb: [], levelsInNoise: true, buffers: 'none' };

/**
 * A quarter of the rooms each is asked for its skew in some and in much noise too, and for a lost
 * buffer; half of them for their levels in noise.
 */
export function briefQuestions(seed: number): RoomQuestions {
  const turn = seed % 8;
  if (turn < 4) {
    return { skewAtDb: [turn < 2 ? 30 : 10], levelsInNoise: true, buffers: 'none' };
  }
  if (turn < 6) return { skewAtDb: [], levelsInNoise: false, buffers: 'none' };
  return { skewAtDb: [], levelsInNoise: false, buffers: turn === 7 ? 'places' : 'segments' };
}

const schedules = new Map<string, Schedule>();

/**
 * How the take of a room is laid out: a lost buffer shows against several sound intervals. Rooms
 * with the same speakers have the same schedule, so that what is made from it is made once.
 */
export function briefSchedule(layout: Layout, questions: RoomQuestions): Schedule {
  const averages = questions.buffers === 'none' ? 1 : 2;
  const key = JSON.stringify([layout, averages]);
  const schedule =
    schedules.get(key) ?? scheduleTake(layout, { sweepSeconds: briefSweepSeconds, averages });
  schedules.set(key, schedule);
  return schedule;
}
