import { realSpectrum } from '../../dsp/fft/fft';
import { distanceBetween } from '../../dsp/room/point';
import { speakerResponse } from '../../dsp/room/speaker-response';
import type { ChannelReading, Estimate } from '../../src/reading/reading';
import type { PracticeChannelTruth, PracticeTruth } from '../../src/rig/practice-truth';
import type { PracticeSpeaker, PracticeSystem } from '../../src/rig/practice-system';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import type { ArrivalKind, Crossing, RoomFigures } from './figures';

type Figures = Pick<RoomFigures, 'arrivals' | 'polarity' | 'levels' | 'roomGains' | 'rolloffs'>;

export interface ReadRoom {
  readonly truth: PracticeTruth;
  /** Room and speaker of every channel, 48 kHz. */
  readonly responses: ReadonlyMap<ChannelLabel, Float64Array>;
  readonly readings: readonly ChannelReading[];
}

/** Holds every channel's reading against what is so in the simulated room. */
export function compareChannels(
  system: PracticeSystem,
  layout: Layout,
  { truth, responses, readings }: ReadRoom,
): Figures {
  const cases = layout.channels.map((channel, index) => {
    const entry = system.speakers[index];
    const known = truth.channels[index];
    const reading = readings[index];
    if (!entry || !known || !reading) throw new RangeError(`${channel.label} is missing`);
    return { channel, entry, known, reading };
  });
  const mains = cases.filter(({ channel }) => channel.kind !== 'sub');
  const levels = mains.map(({ entry }) => trueLevels(system, entry, responses.get(entry.channel)));
  const [reference] = mains;
  const referenceLevel = reference?.reading.levelDb ?? Number.NaN;
  const referenceTruth = levels[0]?.roomDb ?? Number.NaN;
  return {
    arrivals: mains.slice(1).flatMap(arrivalErrors),
    polarity: mains.map(({ reading, known }) => {
      if (reading.polarity === 'cannot tell') return 'open';
      return (reading.polarity === 'inverted') === known.inverted ? 'right' : 'wrong';
    }),
    levels: mains.slice(1).map(({ reading }, index) => {
      if (reading.levelDb === null) return null;
      const expected = (levels[index + 1]?.roomDb ?? Number.NaN) - referenceTruth;
      return reading.levelDb - referenceLevel - expected;
    }),
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

/** Mean of |H|² over log f from 500 to 2000 Hz, in the room and in the free field, dB. */
function trueLevels(
  { microphone }: PracticeSystem,
  { channel, speaker }: PracticeSpeaker,
  response: Float64Array | undefined,
): { roomDb: number; freeDb: number } {
  if (!response) throw new RangeError(`no response of ${channel}`);
  const rate = 48000;
  const spectrum = realSpectrum(response, response.length);
  const distance = distanceBetween(speaker.position, microphone);
  let [inRoom, free, weight] = [0, 0, 0];
  const binHz = rate / response.length;
  for (let k = Math.ceil(500 / binHz); k * binHz <= 2000; k++) {
    const [re, im] = speakerResponse(speaker, k * binHz);
    inRoom += ((spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2) / k;
    free += (re * re + im * im) / distance ** 2 / k;
    weight += 1 / k;
  }
  return { roomDb: 10 * Math.log10(inRoom / weight), freeDb: 10 * Math.log10(free / weight) };
}

function crossing(estimate: Estimate | undefined, truthHz: number): Crossing | null {
  if (!estimate) return null;
  const [low, high] = estimate.interval;
  return { truthHz, medianHz: estimate.median, low, high };
}
