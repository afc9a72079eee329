import type { Layout } from '../../src/system/channel';
import type { RoomQuestions } from './measure-room';

/** Sweeps of the brief takes, seconds. */
export const briefSweepSeconds = 0.7;

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

/** Every other room is asked for its skew in more noise, the others for lost buffers. */
export function briefQuestions(seed: number): RoomQuestions {
  const turn = seed % 8;
  if (turn < 4) return { skewAtDb: [turn < 2 ? 30 : 10], buffers: 'none' };
  return { skewAtDb: [], buffers: turn === 7 ? 'places' : 'segments' };
}
