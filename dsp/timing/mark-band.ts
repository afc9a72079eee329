import { markSignal, type MarkSpec } from '../signal/mark';
import type { Samples } from '../signal/samples';
import { baseHop, correlatedBaseband, toBaseband, type Baseband } from './baseband';
import { matchTemplate, normalise } from './match-template';

/** A capture in the band of its marks, and how far each stretch of it resembles the bare mark. */
export interface MarkBand {
  readonly base: Baseband;
  readonly bare: Float32Array;
}

/** The whole of a capture; see findMarks for what it throws. */
export function markBand(capture: Samples, sampleRate: number, mark: MarkSpec): MarkBand {
  if (!(sampleRate > 2 * mark.endHz && sampleRate < Infinity)) {
    throw new RangeError(`sampleRate must exceed twice ${mark.endHz} Hz, got ${sampleRate}`);
  }
  const [lowHz, highHz] = [Math.min(mark.startHz, mark.endHz), Math.max(mark.startHz, mark.endHz)];
  const chirp = toBaseband(chirpAt(mark, sampleRate), sampleRate, lowHz, highHz).samples;
  const { base, powers } = correlatedBaseband(capture, sampleRate, lowHz, highHz, chirp);
  const bare = powers ? normalise(powers, base, chirp) : matchTemplate(base, chirp);
  return { base, bare };
}

/** A piece of a capture, samples from … to (exclusive), that gives the entries it stands for. */
export interface BandPiece {
  readonly from: number;
  readonly to: number;
  /** Entries of the whole that it gives, first and end. */
  readonly firstEntry: number;
  readonly endEntry: number;
}

/** Entries beyond its own that a piece reads: as long as a mark, and what its band rings. */
const aheadEntries = 4096;

/**
 * Divides a capture of `length` samples into pieces whose bands, made one by one, are joined by
 * joinBands. They overlap, and begin where a block of the whole begins.
 */
export function bandPieces(length: number, decimation: number, count: number): BandPiece[] {
  const entries = Math.ceil(length / decimation);
  const blocks = Math.ceil(entries / baseHop);
  const edge = (k: number): number => Math.min(entries, baseHop * Math.round((k * blocks) / count));
  return Array.from({ length: count }, (_, k) => {
    const [firstEntry, endEntry] = [edge(k), edge(k + 1)];
    // A block earlier, as what is cut off rings into the first.
    const from = Math.max(0, firstEntry - baseHop) * decimation;
    const to = Math.min(length, (endEntry + aheadEntries) * decimation);
    return { from, to, firstEntry, endEntry };
  }).filter(({ firstEntry, endEntry }) => endEntry > firstEntry);
}

/**
 * The band of the whole capture from those of its pieces, in their order; the same but for what
 * counts as silence, which each piece judges by its own strongest stretch. Throws RangeError when
 * there is none.
 */
export function joinBands(pieces: readonly BandPiece[], bands: readonly MarkBand[]): MarkBand {
  const [first] = bands;
  const entries = pieces.at(-1)?.endEntry ?? 0;
  if (!first) throw new RangeError('bands must hold at least one, got none');
  if (bands.length === 1) return first;
  const { decimation, rate } = first.base;
  const samples = new Float32Array(2 * entries);
  const bare = new Float32Array(entries);
  for (const [k, { from, firstEntry, endEntry }] of pieces.entries()) {
    const start = firstEntry - from / decimation;
    const end = endEntry - from / decimation;
    const band = bands[k];
    if (!band) throw new RangeError(`bands must be as many as pieces, got ${bands.length}`);
    samples.set(band.base.samples.subarray(2 * start, 2 * end), 2 * firstEntry);
    bare.set(band.bare.subarray(start, end), firstEntry);
  }
  const peakPower = bands.reduce((most, { base }) => Math.max(most, base.peakPower), 0);
  return { base: { samples, decimation, rate, peakPower }, bare };
}

function chirpAt(mark: MarkSpec, sampleRate: number): Float64Array {
  const scale = sampleRate / mark.sampleRate;
  return markSignal({
    ...mark,
    lengthSamples: Math.round(mark.lengthSamples * scale),
    fadeSamples: Math.round(mark.fadeSamples * scale),
    sampleRate,
  });
}
