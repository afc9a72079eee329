import { passingSpectrum, realSignal, realSpectrum } from '../../dsp/fft/fft';
import { bandShares } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
import type { PowerSpectrum } from '../../dsp/response/power-spectrum';
import { distanceBetween } from '../../dsp/room/point';
import { speakerResponses } from '../../dsp/room/speaker-response';
import { moveLevelBetween } from '../../src/reading/move-level';
import type { ChannelReading } from '../../src/reading/reading';
import type { PracticeSpeaker, PracticeSystem } from '../../src/rig/practice-system';
import type { LevelFigure } from './figures';

/** Levels of some channels against the truth; null where one was not told. */
export type Levels = readonly (LevelFigure | null)[];

/** Mean of |H|² over log f of a channel's band, in the room and in the free field, dB. */
export interface TrueLevels {
  readonly roomDb: number;
  readonly freeDb: number;
}

/** Each channel's level beside the reference's, against the truth. */
export function compareLevels(
  readings: readonly ChannelReading[],
  truths: readonly TrueLevels[],
  reference: ChannelReading,
  referenceTruth: TrueLevels,
): Levels {
  return readings.map((reading, index) => {
    const truth = (truths[index]?.roomDb ?? Number.NaN) - referenceTruth.roomDb;
    const zero = { levelDb: 0, levelInterval: [0, 0] } as const;
    const beside = moveLevelBetween(reading, reference, zero);
    if (!beside || beside.levelDb === null || !beside.levelInterval) return null;
    const [low, high] = beside.levelInterval;
    return { error: beside.levelDb - truth, low: low - truth, high: high - truth };
  });
}

/** So many lines of a padded response's spectrum for one: its power needs two, its mean's ends more. */
const linesApart = 8;
/** Bands that levels are taken of, Hz. */
const bandsHz = { main: [500, 2000], sub: [30, 80] } as const;

/** What a perfect instrument would read of a channel, from its response in the simulated room. */
export function trueLevels(
  { microphone }: PracticeSystem,
  { channel, speaker }: PracticeSpeaker,
  response: Float64Array | undefined,
  isSub: boolean,
): TrueLevels {
  if (!response) throw new RangeError(`no response of ${channel}`);
  const size = 2 * response.length;
  const hzPerBin = 48000 / size;
  const spectrum = passingSpectrum(response, size);
  const band = isSub ? 'sub' : 'main';
  const weights = meanWeights(response.length, band);
  let inRoom = 0;
  for (let k = 0; k < weights.length; k++) {
    const power = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
    inRoom += (weights[k] ?? 0) * power;
  }
  const ownResponse = speakerResponses(speaker);
  const distance = distanceBetween(speaker.position, microphone);
  const [lowHz, highHz] = bandsHz[band];
  const { first, shares } = bandShares(linesOf(size), lowHz, highHz);
  let free = 0;
  for (const [n, share] of shares.entries()) {
    const [re, im] = ownResponse((first + n) * hzPerBin);
    free += (share * (re * re + im * im)) / distance ** 2;
  }
  return { roomDb: powerToDb(inRoom), freeDb: powerToDb(free) };
}

const linesOf = (size: number): PowerSpectrum => ({
  hzPerBin: 48000 / size,
  power: new Float64Array(size / 2 + 1),
});

const knownWeights = new Map<string, Float64Array>();

/**
 * What the lines of a response padded to twice its length add to the mean over log f that its finer
 * lines would give: power between lines follows from the response's autocorrelation, which twice
 * the length holds. So the mean's shares are taken there, cut to its length and brought back.
 */
function meanWeights(length: number, band: keyof typeof bandsHz): Float64Array {
  const key = `${length} ${band}`;
  const known = knownWeights.get(key);
  if (known) return known;
  const fine = linesApart * length;
  const [lowHz, highHz] = bandsHz[band];
  const { first, shares } = bandShares(linesOf(fine), lowHz, highHz);
  const spectrum = new Float64Array(fine + 2);
  for (const [n, share] of shares.entries()) spectrum[2 * (first + n)] = share;
  const lags = realSignal(spectrum, fine);
  const size = 2 * length;
  const kept = new Float64Array(size);
  kept[0] = lags[0] ?? 0;
  for (let n = 1; n < length; n++) kept[n] = kept[size - n] = lags[n] ?? 0;
  const back = realSpectrum(kept, size);
  // A line stands for its twin at the negative frequency too, but for the first and the last.
  const weights = Float64Array.from({ length: length + 1 }, (_, k) => {
    return ((k === 0 || k === length ? 1 : 2) * (fine / 2) * (back[2 * k] ?? 0)) / size;
  });
  knownWeights.set(key, weights);
  return weights;
}
