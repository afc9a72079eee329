import type { ChannelReading, Estimate } from '../../src/reading/reading';
import type { PracticeChannelTruth, PracticeTruth } from '../../src/rig/practice-truth';
import type { PracticeSystem } from '../../src/rig/practice-system';
import type { Channel, ChannelLabel, Layout } from '../../src/system/channel';
import { compareLevels, trueLevels, type Levels, type TrueLevels } from './compare-levels';
import type { ArrivalKind, Crossing, RoomFigures } from './figures';

type Figures = Pick<
  RoomFigures,
  | 'arrivals'
  | 'polarity'
  | 'levels'
  | 'levelsInNoise'
  | 'subLevels'
  | 'subLevelsInNoise'
  | 'roomGains'
  | 'rolloffs'
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
  const subs = cases.filter(({ channel }) => channel.kind === 'sub');
  const trueOf = ({ channel, entry }: (typeof cases)[number]): TrueLevels =>
    trueLevels(system, entry, responses.get(entry.channel), channel.kind === 'sub');
  const truths = mains.map(trueOf);
  const subTruths = subs.map(trueOf);
  const [first] = mains;
  const beside = (told: readonly ChannelReading[] | null): Record<'own' | 'subs', Levels> => {
    const of = (all: typeof cases): ChannelReading[] =>
      all.flatMap((one) => told?.[one.index] ?? []);
    const [reference] = first ? of([first]) : [];
    const [truth] = truths;
    if (!reference || !truth) return { own: [], subs: [] };
    return {
      own: compareLevels(of(mains.slice(1)), truths.slice(1), reference, truth),
      subs: compareLevels(of(subs), subTruths, reference, truth),
    };
  };
  const [quiet, loud] = [beside(readings), beside(inNoise)];
  return {
    arrivals: mains.slice(1).flatMap(arrivalErrors),
    polarity: mains.map(({ reading, known }) => {
      if (reading.polarity === 'cannot tell') return 'open';
      return (reading.polarity === 'inverted') === known.inverted ? 'right' : 'wrong';
    }),
    levels: quiet.own,
    levelsInNoise: loud.own,
    subLevels: quiet.subs,
    subLevelsInNoise: loud.subs,
    roomGains: truths.map(({ roomDb, freeDb }) => roomDb - freeDb),
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

function crossing(estimate: Estimate | undefined, truthHz: number): Crossing | null {
  if (!estimate) return null;
  const [low, high] = estimate.interval;
  return { truthHz, medianHz: estimate.median, low, high };
}
