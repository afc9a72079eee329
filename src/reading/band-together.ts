import type { MarkSpec } from '../../dsp/signal/mark';
import { decimationFor } from '../../dsp/timing/baseband';
import { bandPieces, joinBands, markBand, type MarkBand } from '../../dsp/timing/mark-band';
import type { Schedule } from '../take/schedule';
import type { TakeCapture } from './ground-take';
import type { ReadingHelper } from './read-together';

/** Pieces shorter than this are not worth the way, seconds. */
const leastSeconds = 5;

/**
 * The capture in the band of its marks, made piece by piece here and by the helpers; undefined where
 * there are none, or where it is too short to share.
 */
export async function bandTogether(
  schedule: Schedule,
  { samples, sampleRate }: TakeCapture,
  helpers: readonly ReadingHelper[],
): Promise<MarkBand | undefined> {
  const mark: MarkSpec = { ...schedule.mark, sampleRate: schedule.sampleRate };
  const count = Math.min(
    helpers.length + 1,
    Math.floor(samples.length / sampleRate / leastSeconds),
  );
  if (count < 2 || !(sampleRate > 2 * mark.endHz)) return undefined;
  const pieces = bandPieces(samples.length, decimationFor(sampleRate), count);
  const here = (from: number, to: number): MarkBand =>
    markBand(samples.subarray(from, to), sampleRate, mark);
  const there = pieces.slice(1).map(async ({ from, to }, k) => {
    const piece = { samples: samples.slice(from, to), sampleRate, mark };
    return (await helpers[k]?.band(piece).catch(() => null)) ?? null;
  });
  const [own] = pieces;
  if (!own) return undefined;
  const first = here(own.from, own.to);
  const others = await Promise.all(there);
  // What a helper failed at is made here.
  const rest = others.map((band, k) => {
    const piece = pieces[k + 1];
    return band ?? here(piece?.from ?? 0, piece?.to ?? 0);
  });
  return joinBands(pieces, [first, ...rest]);
}
