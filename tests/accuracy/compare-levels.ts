import { passingSpectrum } from '../../dsp/fft/fft';
import { bandShares } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
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
  const size = linesApart * response.length;
  const hzPerBin = 48000 / size;
  const spectrum = passingSpectrum(response, size);
  const ownResponse = speakerResponses(speaker);
  const distance = distanceBetween(speaker.position, microphone);
  const lines = { hzPerBin, power: new Float64Array(size / 2 + 1) };
  let [inRoom, free] = [0, 0];
  const [lowHz, highHz] = bandsHz[isSub ? 'sub' : 'main'];
  const { first, shares } = bandShares(lines, lowHz, highHz);
  for (const [n, share] of shares.entries()) {
    const k = first + n;
    inRoom += share * ((spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2);
    const [re, im] = ownResponse(k * hzPerBin);
    free += (share * (re * re + im * im)) / distance ** 2;
  }
  return { roomDb: powerToDb(inRoom), freeDb: powerToDb(free) };
}
