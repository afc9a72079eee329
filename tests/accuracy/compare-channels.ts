import { passingSpectrum } from '../../dsp/fft/fft';
import { eachInBand } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
import { distanceBetween } from '../../dsp/room/point';
import { speakerResponses } from '../../dsp/room/speaker-response';
import { moveLevelBetween } from '../../src/reading/move-level';
import type { ChannelReading, Estimate } from '../../src/reading/reading';
import type { PracticeChannelTruth, PracticeTruth } from '../../src/rig/practice-truth';
import type { PracticeSpeaker, PracticeSystem } from '../../src/rig/practice-system';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import type { ArrivalKind, Crossing, LevelFigure, RoomFigures } from './figures';

type Figures = Pick<
  RoomFigures,
  'arrivals' | 'polarity' | 'levels' | 'levelsInNoise' | 'roomGains' | 'rolloffs'
>;

export interface ReadRoom {
  readonly truth: PracticeTruth;
  /** Room and speaker of every channel, 48 kHz. */
  readonly responses: ReadonlyMap<ChannelLabel, Float64Array>;
  readonly readings: readonly ChannelReading[];
  /** Those of the same take in more noise; null where there are none. */
  readonly inNoise: readonly ChannelReading[] | null;
}

/** Holds every channel's reading against what is so in the simulated room. */
export function compareChannels(
  system: PracticeSystem,
  layout: Layout,
  { truth, responses, readings, inNoise }: ReadRoom,
): Figures {
  const cases = layout.channels.map((channel, index) => {
    const entry = system.speakers[index];
    const known = truth.channels[index];
    const reading = readings[index];
    if (!entry || !known || !reading) throw new RangeError(`${channel.label} is missing`);
    return { channel, index, entry, known, reading };
  });
  const mains = cases.filter(({ channel }) => channel.kind !== 'sub');
  const levels = mains.map(({ entry }) => trueLevels(system, entry, responses.get(entry.channel)));
  const roomDb = levels.map((level) => level.roomDb);
  return {
    arrivals: mains.slice(1).flatMap(arrivalErrors),
    polarity: mains.map(({ reading, known }) => {
      if (reading.polarity === 'cannot tell') return 'open';
      return (reading.polarity === 'inverted') === known.inverted ? 'right' : 'wrong';
    }),
    levels: compareLevels(
      mains.map(({ reading }) => reading),
      roomDb,
    ),
    levelsInNoise: inNoise
      ? compareLevels(
          mains.flatMap(({ index }) => inNoise[index] ?? []),
          roomDb,
        )
      : [],
    roomGains: levels.map(({ roomDb, freeDb }) => roomDb - freeDb),
    rolloffs: cases.map(({ channel, known, reading }) => {
      const told = reading.rolloff;
      return {
        kind: channel.kind === 'sub' ? 'sub' : 'main',
        f3: crossing(told?.f3Hz, known.f3Hz),
        f6: crossing(told?.f6Hz, known.f6Hz),
        f10: crossing(told?.f10Hz, known.f10Hz),
        f6UpperHz: told?.f6UpperHz ?? null,
        box:
          !told || told.box.kind === 'cannot tell'
            ? 'open'
            : told.box.kind === known.box
              ? 'right'
              : 'wrong',
      };
    }),
  };
}

function arrivalErrors({
  channel,
  known,
  reading,
}: {
  channel: Channel;
  known: PracticeChannelTruth;
  reading: ChannelReading;
}): { kind: ArrivalKind; error: number | null }[] {
  const against = (value: number | null, truth: number): number | null =>
    value === null ? null : value - truth;
  const direct = against(reading.distanceMetres, known.distanceMetres);
  if (known.ceilingPathMetres !== null) {
    const over = against(reading.ceilingPathMetres, known.ceilingPathMetres);
    return [
      { kind: 'leak', error: direct },
      { kind: 'ceiling', error: over },
    ];
  }
  if (channel.kind === 'height') return [{ kind: 'height', error: direct }];
  const front = channel.group === 'fronts' || channel.group === 'centre';
  return [{ kind: front ? 'front' : 'surround', error: direct }];
}

/** Each channel's level beside the first's, against the truth. */
function compareLevels(
  readings: readonly ChannelReading[],
  roomDb: readonly number[],
): (LevelFigure | null)[] {
  const [reference] = readings;
  return readings.slice(1).map((reading, index) => {
    const truth = (roomDb[index + 1] ?? Number.NaN) - (roomDb[0] ?? Number.NaN);
    const zero = { levelDb: 0, levelInterval: [0, 0] } as const;
    const beside = reference && moveLevelBetween(reading, reference, zero);
    if (!beside || beside.levelDb === null || !beside.levelInterval) return null;
    const [low, high] = beside.levelInterval;
    return { error: beside.levelDb - truth, low: low - truth, high: high - truth };
  });
}

/** So many lines of a padded response's spectrum for one: its power needs two, its mean's ends more. */
const linesApart = 8;

/** Mean of |H|² over log f from 500 to 2000 Hz, in the room and in the free field, dB. */
function trueLevels(
  { microphone }: PracticeSystem,
  { channel, speaker }: PracticeSpeaker,
  response: Float64Array | undefined,
): { roomDb: number; freeDb: number } {
  if (!response) throw new RangeError(`no response of ${channel}`);
  const size = linesApart * response.length;
  const hzPerBin = 48000 / size;
  const spectrum = passingSpectrum(response, size);
  const ownResponse = speakerResponses(speaker);
  const distance = distanceBetween(speaker.position, microphone);
  const lines = { hzPerBin, power: new Float64Array(size / 2 + 1) };
  let [inRoom, free] = [0, 0];
  eachInBand(lines, 500, 2000, (k, share) => {
    inRoom += share * ((spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2);
    const [re, im] = ownResponse(k * hzPerBin);
    free += (share * (re * re + im * im)) / distance ** 2;
  });
  return { roomDb: powerToDb(inRoom), freeDb: powerToDb(free) };
}

function crossing(estimate: Estimate | undefined, truthHz: number): Crossing | null {
  if (!estimate) return null;
  const [low, high] = estimate.interval;
  return { truthHz, medianHz: estimate.median, low, high };
}
