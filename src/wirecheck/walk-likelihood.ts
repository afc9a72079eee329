import { median } from '../../dsp/signal/median';
import type { ChannelLabel } from '../system/channel';
import type { SpeakerOffset } from '../system/speaker-offset';
import { expectFar, expectSound, type ExpectedSound } from './expected-sound';
import { soundsLikeSub } from './sounds-like-sub';
import type { WalkStop } from './walk';

/**
 * How far levels and times stray from what the plan makes expect: rooms, aims, hands. Tails of a
 * Student distribution of 6 degrees of freedom, so that one odd reading cannot rule. From simulated
 * walks.
 */
const spread = { levelDb: 4, lowDb: 4, seconds: 0.0015, onsetSeconds: 0.003 } as const;
const freedom = 6;

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
  places: ReadonlyMap<ChannelLabel, SpeakerOffset>,
): HeardOnWalk[] {
  const speakers = stops.map(({ speaker }) => speaker);
  const heard = channels.map((channel) => ({
    channel,
    sounds: stops.map(({ sounds }) => sounds.find((one) => one.channel === channel) ?? null),
    ways: expectSound(speakers, places, [channel]).seconds,
  }));
  // Each stop has a clock of its own: most channels sound from where they should.
  const late = stops.map((_, at) =>
    middleOf(heard.map(({ sounds, ways }) => minus(sounds[at]?.arrivalSeconds, ways[at]))),
  );
  return heard.flatMap(({ channel, sounds }) => {
    const whole = sounds.map((sound) => sound?.levelDb ?? null);
    const low = sounds.map((sound) => sound?.lowDb ?? null);
    const inBass = soundsLikeSub({ levelDb: levelOf(whole), lowDb: levelOf(low) });
    const levels = inBass ? low : whole;
    if (levelOf(levels) === null) return [];
    const times = sounds.map((sound, at) => minus(sound?.arrivalSeconds, late[at]));
    return [{ channel, levels, band: inBass ? 'lowDb' : 'levelDb', times }];
  });
}

/**
 * How much likelier a channel is to come from these speakers than from somewhere far from all
 * stops, in nats; its own gain and delay are free.
 */
export function likelihoodOf(heard: HeardOnWalk, expected: ExpectedSound): number {
  const far = expectFar(heard.levels.length);
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
  const apart = values.map((value, at) => minus(value, expected[at]));
  const middle = middleOf(apart);
  return apart.reduce<number>((sum, one) => {
    if (one === null) return sum;
    const off = (one - middle) / width;
    return sum - ((freedom + 1) / 2) * Math.log1p((off * off) / freedom);
  }, 0);
}

/** Middle level of the stops a channel was heard at; null when there are none. */
function levelOf(values: readonly (number | null)[]): number | null {
  return values.some((value) => value !== null) ? middleOf(values) : null;
}

/** Middle of what is there; 0 when nothing is. */
function middleOf(values: readonly (number | null)[]): number {
  return median(values.filter((value) => value !== null));
}

function minus(value: number | null | undefined, less: number | undefined): number | null {
  return value === null || value === undefined ? null : value - (less ?? 0);
}
