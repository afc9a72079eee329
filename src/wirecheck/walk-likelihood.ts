import type { ChannelLabel } from '../system/channel';
import { expectFar, expectSound, type ExpectedSound } from './expected-sound';
import type { WalkSound, WalkStop } from './walk';
import type { WalkPlace } from './walk-places';

/**
 * How far levels and times stray from what the plan makes expect: rooms, aims, hands. Tails of a
 * Student distribution of 6 degrees of freedom, so that one odd reading cannot rule. From simulated
 * walks.
 */
const spread = { levelDb: 4, lowDb: 4, seconds: 0.0015, onsetSeconds: 0.003 } as const;
const freedom = 6;
/** A channel that is so much louder in the bass plays through a sub, or from one. */
const bassDb = 15;

/** A channel as heard on a walk. */
export interface HeardOnWalk {
  readonly channel: ChannelLabel;
  /** Per stop, dB; null where it was not heard. */
  readonly levels: readonly (number | null)[];
  /** The band that carries it. */
  readonly band: 'levelDb' | 'lowDb';
  /** Per stop, seconds, on a clock that is the stop's own but for a constant; null: not told. */
  readonly times: readonly (number | null)[];
}

/** What was heard of every channel, in the band that carries it; those heard nowhere are left out. */
export function gatherWalk(
  stops: readonly WalkStop[],
  channels: readonly ChannelLabel[],
  places: ReadonlyMap<ChannelLabel, WalkPlace>,
): HeardOnWalk[] {
  const speakers = stops.map(({ speaker }) => speaker);
  const soundsOf = (channel: ChannelLabel): (WalkSound | null)[] =>
    stops.map(({ sounds }) => sounds.find((one) => one.channel === channel) ?? null);
  // Each stop has a clock of its own: most channels sound from where they should.
  const late = stops.map((_, at) =>
    median(
      channels.map((channel) => {
        const heard = soundsOf(channel)[at]?.arrivalSeconds ?? null;
        const way = expectSound(speakers, places, [channel]).seconds[at] ?? 0;
        return heard === null ? null : heard - way;
      }),
    ),
  );
  return channels.flatMap((channel) => {
    const sounds = soundsOf(channel);
    const whole = sounds.map((sound) => sound?.levelDb ?? null);
    const low = sounds.map((sound) => sound?.lowDb ?? null);
    const inBass = count(low) > 0 && (count(whole) === 0 || median(low) - median(whole) > bassDb);
    const levels = inBass ? low : whole;
    if (count(levels) === 0) return [];
    const times = sounds.map((sound, at) => {
      const arrived = sound?.arrivalSeconds ?? null;
      return arrived === null ? null : arrived - (late[at] ?? 0);
    });
    const band = inBass ? 'lowDb' : 'levelDb';
    return [{ channel, levels, band, times }];
  });
}

/**
 * How much likelier a channel is to come from these speakers than from somewhere far from all
 * stops, in nats; its own gain and delay are free.
 */
export function likelihoodOf(heard: HeardOnWalk, expected: ExpectedSound): number {
  const far = expectFar(heard.levels.map(() => 'FL'));
  return logLikelihood(heard, expected) - logLikelihood(heard, far);
}

function logLikelihood({ levels, band, times }: HeardOnWalk, expected: ExpectedSound): number {
  const timeSpread = band === 'lowDb' ? spread.onsetSeconds : spread.seconds;
  return fit(levels, expected[band], spread[band]) + fit(times, expected.seconds, timeSpread);
}

function fit(
  values: readonly (number | null)[],
  expected: readonly number[],
  width: number,
): number {
  const apart = values.map((value, at) => (value === null ? null : value - (expected[at] ?? 0)));
  const middle = median(apart);
  return apart.reduce<number>((sum, one) => {
    if (one === null) return sum;
    const off = (one - middle) / width;
    return sum - ((freedom + 1) / 2) * Math.log1p((off * off) / freedom);
  }, 0);
}

function count(values: readonly (number | null)[]): number {
  return values.filter((value) => value !== null).length;
}

/** Middle of what is there; 0 when nothing is. */
function median(values: readonly (number | null)[]): number {
  const there = values.filter((value) => value !== null).sort((a, b) => a - b);
  const half = there.length >> 1;
  if (there.length % 2 === 1) return there[half] ?? 0;
  return ((there[half - 1] ?? 0) + (there[half] ?? 0)) / 2;
}
