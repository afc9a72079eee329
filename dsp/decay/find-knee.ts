import type { Envelope } from './band-envelope';
import { blockPowers, fitLine, meanPower, whereLineIs, type Block } from './decay-line';

/** Where a decay goes under in the noise. */
export interface Knee {
  /** Index in the envelope, fractional: where decay and noise meet, or the end of the record. */
  readonly at: number;
  /** Mean power of the noise. */
  readonly noise: number;
  /** How far that may be off, as a share of it: one standard deviation. */
  readonly noiseError: number;
  /** Late decay: its power falls as e^(−rate·t), 1/s. */
  readonly rate: number;
  /** Power of the late decay at the knee. */
  readonly power: number;
  /** Whether the decay reaches the noise before the record ends. */
  readonly reached: boolean;
}

export interface KneeSearch {
  /** Indices between which the envelope is looked at: the arrival and the end of what is sound. */
  readonly from: number;
  readonly to: number;
  /** Width of the band, Hz. */
  readonly widthHz: number;
  /** Mean power of noise heard by itself; null: only the record's own end tells it. */
  readonly noise: number | null;
}

const firstBlockSeconds = 0.01;
const blocksPerTenDb = 5;
/** The late decay is read from so far above the noise, dB, over so many dB. */
const aboveNoiseDb = 7.5;
const lateDb = 20;
/** Without noise heard by itself at least this share of the record stands for it. */
const tailShare = 0.1;
const leastBlocks = 4;
const mostPasses = 8;
const closeEnough = 0.002;
/** Powers so far below the largest count as silence. */
const silence = 1e-20;

const above = 10 ** (aboveNoiseDb / 10);
const nepersPerDb = Math.LN10 / 10;

/**
 * Intersection of a decay with the noise, found by turns: the noise from what lies 7.5 dB past the
 * knee, the late decay by least squares through block means over 20 dB that end 7.5 dB above the
 * noise, the knee where the two meet. Blocks are a fifth of the time in which 10 dB are lost, and
 * last at least half the inverse of the band's width. Null when no fall stands clear of the noise.
 * Source: Lundeby, Vigran, Bietz and Vorländer, Acustica 81 (1995), from memory.
 */
export function findKnee({ power, sampleRate }: Envelope, search: KneeSearch): Knee | null {
  const { from, to, widthHz } = search;
  const tail = Math.max(1, Math.floor(tailShare * (to - from)));
  const largest = power.slice(Math.ceil(from), to).reduce((most, one) => Math.max(most, one), 0);
  if (!(to - from >= 10) || !(largest > 0)) return null;
  const least = silence * largest;
  const error = (samples: number): number =>
    Math.min(1, 1 / Math.sqrt((widthHz * samples) / sampleRate));
  const tailPower = meanPower(power, to - tail, to);
  const quietest = Math.min(search.noise ?? tailPower, tailPower);
  let noise = Math.max(quietest, least);
  let noiseError = error(tail);
  const shortest = sampleRate / (2 * widthHz);
  let line = fitLine(firstFall(power, search, sampleRate, noise));
  if (!line) return null;
  let knee = Math.min(whereLineIs(line, noise), to);
  for (let pass = 0; pass < mostPasses; pass++) {
    const past = Math.ceil(knee + (aboveNoiseDb * nepersPerDb) / line.rate);
    const own = past <= to - tail;
    // What is left of the decay there would count as noise, but not in the record's last tenth.
    const most = tailPower * (1 + 2 * error(tail));
    noise = Math.max(own ? Math.min(meanPower(power, past, to), most) : quietest, least);
    noiseError = error(own ? to - past : tail);
    const fall = (10 * nepersPerDb) / line.rate / blocksPerTenDb;
    const length = Math.max(1, Math.round(Math.max(fall, shortest)));
    const late = lateFall(clearBlocks(blockPowers(power, from, to, length), noise));
    line = fitLine(late) ?? line;
    const last = knee;
    knee = Math.min(Math.max(whereLineIs(line, noise), late[0]?.at ?? from), to);
    if (Math.abs(knee - last) < closeEnough * (to - from)) break;
  }
  return {
    at: knee,
    noise,
    noiseError,
    rate: line.rate * sampleRate,
    power: Math.exp(line.atZero - line.rate * knee),
    reached: knee < to,
  };
}

/** The first fall, in blocks short enough that it spans three of them. */
function firstFall(
  power: Float64Array,
  { from, to, widthHz }: KneeSearch,
  sampleRate: number,
  noise: number,
): readonly Block[] {
  const seconds = Math.max(firstBlockSeconds, 1 / widthHz);
  for (let length = Math.round(seconds * sampleRate); length >= 1; length >>= 1) {
    const blocks = clearBlocks(blockPowers(power, from, to, length), noise);
    if (blocks.length >= 3) return blocks;
  }
  return [];
}

/** Blocks from the strongest to the last before two in a row lie near the noise. */
function clearBlocks(blocks: readonly Block[], noise: number): readonly Block[] {
  const near = (n: number): boolean => (blocks[n]?.power ?? 0) < noise * above;
  const top = blocks.reduce((best, { power }, n) => {
    return power > (blocks[best]?.power ?? 0) ? n : best;
  }, 0);
  let end = top;
  while (end < blocks.length && !(near(end) && near(end + 1))) end++;
  return blocks.slice(top, end);
}

/** The last of these blocks, from where they stand 20 dB above the very last, at least four. */
function lateFall(blocks: readonly Block[]): readonly Block[] {
  const last = blocks.at(-1)?.power ?? 0;
  const start = blocks.findLastIndex(({ power }) => power > last * 10 ** (lateDb / 10));
  return blocks.slice(Math.max(0, Math.min(start, blocks.length - leastBlocks)));
}
