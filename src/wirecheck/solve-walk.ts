import { assign, pairMargins } from '../../dsp/assignment/assign';
import type { ChannelLabel } from '../system/channel';
import { describeExchange } from './describe-exchange';
import { walkLikelihood } from './walk-likelihood';
import type { WalkResult, WalkStop } from './walk';
import type { WiringFinding } from './wiring-finding';

/** An explanation must beat all others by this much, nats (20 to 1), to be told. */
const leastMargin = 3;
/** A speaker of which no channel sounds is as unlikely as this, nats (about 1 in 50). */
const emptyNats = 4;
/** A second speaker carries a channel when it is this likely by itself, nats. */
const doubledFrom = 1.5;

/**
 * Which speaker each channel sounds from: the pairing of stops and channels that explains the
 * levels and arrivals best (an assignment problem; a stop may stay without a channel), told only
 * where it beats every other pairing by a clear margin. Channels that were heard nowhere are
 * silent. Throws RangeError when a speaker was visited twice.
 */
export function solveWalk(
  stops: readonly WalkStop[],
  channels: readonly ChannelLabel[],
): WalkResult {
  const speakers = stops.map(({ speaker }) => speaker);
  if (new Set(speakers).size < speakers.length) {
    throw new RangeError(`every speaker may be visited once, got ${speakers.join(' ')}`);
  }
  const isHeard = (channel: ChannelLabel): boolean =>
    stops.some(({ sounds }) =>
      sounds.some((sound) => sound.channel === channel && sound.levelDb !== null),
    );
  const loud = channels.filter(isHeard);
  const silent = channels.filter((channel) => !isHeard(channel));
  const likelihood = walkLikelihood(stops, loud);
  const first = pair(speakers, loud, likelihood);
  const doubled = findDoubled(first, loud, likelihood, speakers);
  const seconds = new Set([...doubled.values()].flat());
  const { heard, without } = pair(speakers, loud, likelihood, seconds);
  const clear = heard.filter(({ margin }) => margin >= leastMargin);
  const doubtful = heard.filter(({ margin }) => margin < leastMargin);
  const findings: WiringFinding[] = [
    ...silent.map((channel) => ({ kind: 'silent', channel }) as const),
    ...describeExchange(clear.filter(({ channel }) => !doubled.has(channel))),
    ...[...doubled].map(([channel, from]) => {
      const own = heard.find((one) => one.channel === channel)?.speaker;
      return { kind: 'doubled', channel, from: own ? [own, ...from] : from } as const;
    }),
    ...without.map((speaker) => ({ kind: 'mute speaker', speaker }) as const),
    ...inverted(clear, stops),
  ];
  if (doubtful.length > 0) {
    findings.push({ kind: 'cannot tell', channels: doubtful.map(({ channel }) => channel) });
  }
  return { heard, findings };
}

interface Pairing {
  readonly heard: WalkResult['heard'];
  /** Speakers left without a channel. */
  readonly without: readonly ChannelLabel[];
}

/** The best pairing of all stops but the `left` ones, with the margin of every pair. */
function pair(
  speakers: readonly ChannelLabel[],
  channels: readonly ChannelLabel[],
  likelihood: readonly (readonly number[])[],
  left: ReadonlySet<ChannelLabel> = new Set(),
): Pairing {
  const stops = [...speakers.entries()].filter(([, speaker]) => !left.has(speaker));
  const costs = stops.map(([at]) => [
    ...(likelihood[at] ?? []).map((nats) => -nats),
    ...stops.map(() => emptyNats),
  ]);
  const columns = assign(costs) ?? [];
  const margins = pairMargins(costs, columns);
  const heard: { channel: ChannelLabel; speaker: ChannelLabel; margin: number }[] = [];
  const without: ChannelLabel[] = [];
  for (const [row, [, speaker]] of stops.entries()) {
    const channel = channels[columns[row] ?? -1];
    if (channel === undefined) without.push(speaker);
    else heard.push({ channel, speaker, margin: margins[row] ?? 0 });
  }
  return { heard, without };
}

/** Speakers that no channel was left for and at which one that has another stands out as well. */
function findDoubled(
  { heard, without }: Pairing,
  channels: readonly ChannelLabel[],
  likelihood: readonly (readonly number[])[],
  speakers: readonly ChannelLabel[],
): Map<ChannelLabel, ChannelLabel[]> {
  const doubled = new Map<ChannelLabel, ChannelLabel[]>();
  for (const speaker of without) {
    const row = likelihood[speakers.indexOf(speaker)] ?? [];
    const most = Math.max(...row);
    const channel = channels[row.indexOf(most)];
    if (channel === undefined || most < doubledFrom) continue;
    if (heard.some((one) => one.channel === channel)) {
      doubled.set(channel, [...(doubled.get(channel) ?? []), speaker]);
    }
  }
  return doubled;
}

function inverted(clear: WalkResult['heard'], stops: readonly WalkStop[]): WiringFinding[] {
  return clear
    .filter(({ channel, speaker }) =>
      stops.some(
        (stop) =>
          stop.speaker === speaker &&
          stop.sounds.some((one) => one.channel === channel && one.polarity === 'inverted'),
      ),
    )
    .map(({ speaker }) => ({ kind: 'inverted', speaker }));
}
