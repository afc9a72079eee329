import { assign } from '../../dsp/assignment/assign';
import { median } from '../../dsp/signal/median';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { ChannelLabel } from '../system/channel';
import { isSub } from '../system/channel-names';
import { soundsLikeSub } from './sounds-like-sub';
import type { WalkSound } from './walk';
import type { WiringFinding } from './wiring-finding';

/** What one stop at the seat says of the wiring; it warns, and proves nothing. */
export interface SeatCheck {
  readonly findings: readonly WiringFinding[];
  /** Speakers whose distances are so alike that an exchange of the two would not show. */
  readonly cannotTell: readonly (readonly [ChannelLabel, ChannelLabel])[];
  /** Speakers without a declared distance, which arrivals say nothing of. */
  readonly unplaced: readonly ChannelLabel[];
}

/** How far an arrival strays from a distance by tape: 15 cm. */
const spreadSeconds = 0.45e-3;
/** Another order must explain the arrivals this much better than the right one, nats. */
const leastNats = 8;
/** Speakers nearer to each other in time than this are not told apart. */
const alikeSeconds = 1.2e-3;

/**
 * Holds what every channel sounded like at the seat against the declared distances of the speakers
 * (metres): which channels arrive as if they were in each other's places, which are silent, which
 * inverted, and whether subs sound like subs. The delay of the audio path is free. Throws RangeError
 * for a distance that is not positive. Common practice; limits from simulated rooms.
 */
export function checkFromSeat(
  sounds: readonly WalkSound[],
  distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>,
  celsius = 20,
): SeatCheck {
  const metresPerSecond = speedOfSound(celsius);
  const timed = sounds.flatMap(({ channel, arrivalSeconds }) => {
    const metres = distanceMetres[channel];
    if (metres !== undefined && !(metres > 0)) {
      throw new RangeError(`distance of ${channel} must be positive, got ${metres}`);
    }
    if (isSub(channel) || arrivalSeconds === null || metres === undefined) return [];
    return [{ channel, arrivalSeconds, waySeconds: metres / metresPerSecond }];
  });
  const silent = sounds.filter(({ levelDb, lowDb }) => levelDb === null && lowDb === null);
  const inverted = sounds.filter(({ polarity }) => polarity === 'inverted');
  const odd = sounds.filter((sound) => isSub(sound.channel) !== soundsLikeSub(sound));
  const strange = odd.filter((one) => !silent.includes(one)).map(({ channel }) => channel);
  const findings: WiringFinding[] = [
    ...silent.map(({ channel }) => ({ kind: 'silent', channel }) as const),
    ...misplaced(timed).map((channels) => ({ kind: 'suspect', channels }) as const),
    ...(strange.length > 0 ? [{ kind: 'suspect', channels: strange } as const] : []),
    ...inverted.map(({ channel }) => ({ kind: 'inverted', speaker: channel }) as const),
  ];
  return {
    findings,
    cannotTell: alikePairs(timed),
    unplaced: sounds
      .map(({ channel }) => channel)
      .filter((channel) => !isSub(channel) && distanceMetres[channel] === undefined),
  };
}

interface TimedSound {
  readonly channel: ChannelLabel;
  readonly arrivalSeconds: number;
  readonly waySeconds: number;
}

/** Rounds of channels that arrive in each other's places, when that explains all arrivals far better. */
function misplaced(timed: readonly TimedSound[]): ChannelLabel[][] {
  const delay = median(timed.map(({ arrivalSeconds, waySeconds }) => arrivalSeconds - waySeconds));
  const costs = timed.map(({ arrivalSeconds }) =>
    timed.map(({ waySeconds }) => costOf(arrivalSeconds - delay - waySeconds)),
  );
  const places = assign(costs);
  if (!places) return [];
  const seen = new Set<number>();
  const rounds: ChannelLabel[][] = [];
  for (const [start, place] of places.entries()) {
    if (place === start || seen.has(start)) continue;
    const round: number[] = [];
    for (let at = start; !seen.has(at); at = places[at] ?? start) {
      seen.add(at);
      round.push(at);
    }
    const gain = round.reduce(
      (sum, at) => sum + (costs[at]?.[at] ?? 0) - (costs[at]?.[places[at] ?? at] ?? 0),
      0,
    );
    if (gain >= leastNats) rounds.push(round.flatMap((at) => timed[at]?.channel ?? []));
  }
  return rounds;
}

/** Nats; far off counts no more than very far off. */
function costOf(seconds: number): number {
  return Math.min(0.5 * (seconds / spreadSeconds) ** 2, 20);
}

function alikePairs(timed: readonly TimedSound[]): [ChannelLabel, ChannelLabel][] {
  return timed.flatMap((one, at) =>
    timed
      .slice(at + 1)
      .filter((other) => Math.abs(one.waySeconds - other.waySeconds) < alikeSeconds)
      .map((other): [ChannelLabel, ChannelLabel] => [one.channel, other.channel]),
  );
}
