import { assign, pairMargins } from '../../dsp/assignment/assign';
import type { ChannelLabel, Layout } from '../system/channel';
import type { DeclaredSystem } from '../system/declared-system';
import { describeExchange } from './describe-exchange';
import { expectSound } from './expected-sound';
import { gatherWalk, likelihoodOf, type HeardOnWalk } from './walk-likelihood';
import { walkPlaces } from './walk-places';
import type { WalkResult, WalkStop } from './walk';
import type { WiringFinding } from './wiring-finding';

/** An explanation must beat all others by this much, nats (20 to 1), to be told. */
const leastMargin = 3;
/** A speaker of which no channel sounds is as unlikely as this, nats (about 1 in 50). */
const emptyNats = 4;
/**
 * Most channels are wired right: so much likelier than any other speaker, nats. Less than half the
 * least margin, so that two channels nobody could hear apart are not taken for right.
 */
const ownNats = 1.3;
/** Two speakers on one channel must explain it better than one by this much, nats. */
const doubledFrom = 3;
/** How much louder the second of two speakers on one channel may be. */
const doubledGainsDb = [-9, -6, -3, 0, 3, 6, 9];

/**
 * Which speaker each channel sounds from: the pairing of stops and channels that explains the
 * levels and arrivals at all stops best, given where the speakers stand (an assignment problem; a
 * stop may stay without a channel), told only where it beats every other pairing by a clear margin.
 * Channels that were heard nowhere are silent. Throws RangeError when a speaker was visited twice.
 */
export function solveWalk(
  stops: readonly WalkStop[],
  layout: Layout,
  system?: DeclaredSystem,
): WalkResult {
  const speakers = stops.map(({ speaker }) => speaker);
  if (new Set(speakers).size < speakers.length) {
    throw new RangeError(`every speaker may be visited once, got ${speakers.join(' ')}`);
  }
  const channels = layout.channels.map(({ label }) => label);
  const places = walkPlaces(layout, system);
  const sounds = gatherWalk(stops, channels, places);
  const loud = sounds.map(({ channel }) => channel);
  const silent = stops.length === 0 ? [] : channels.filter((label) => !loud.includes(label));
  const likelihood = speakers.map((speaker) => {
    const expected = expectSound(speakers, places, [speaker]);
    return sounds.map(
      (heard) => likelihoodOf(heard, expected) + (heard.channel === speaker ? ownNats : 0),
    );
  });
  const explain = (heard: HeardOnWalk, from: readonly ChannelLabel[]): number =>
    Math.max(
      ...doubledGainsDb.map((gainDb) =>
        likelihoodOf(heard, expectSound(speakers, places, from, gainDb)),
      ),
    );
  const first = pair(speakers, loud, likelihood);
  const doubled = findDoubled(first, sounds, explain);
  const seconds = new Set([...doubled.values()].flat());
  // A channel on two speakers is judged by both of them.
  const together = speakers.map((speaker, row) =>
    sounds.map((heard, column) => {
      const others = doubled.get(heard.channel) ?? [];
      return others.length > 0
        ? explain(heard, [speaker, ...others])
        : (likelihood[row]?.[column] ?? 0);
    }),
  );
  const { heard, without } = pair(speakers, loud, together, seconds);
  const clear = heard.filter(({ margin }) => margin >= leastMargin);
  const doubtful = heard.filter(({ margin }) => margin < leastMargin);
  // Heard, its own speaker visited, and yet near none of those visited.
  const lost = loud.filter(
    (channel) => speakers.includes(channel) && !heard.some((one) => one.channel === channel),
  );
  const findings: WiringFinding[] = [
    ...silent.map((channel) => ({ kind: 'silent', channel }) as const),
    ...describeExchange(clear.filter(({ channel }) => !doubled.has(channel))),
    ...[...doubled].map(([channel, from]) => {
      const own = heard.find((one) => one.channel === channel)?.speaker;
      return { kind: 'doubled', channel, from: own ? [own, ...from] : from } as const;
    }),
    ...without
      .filter((speaker) => !lost.includes(speaker))
      .map((speaker) => ({ kind: 'mute speaker', speaker }) as const),
    ...inverted(clear, stops),
  ];
  const unclear = [...doubtful.map(({ channel }) => channel), ...lost];
  if (unclear.length > 0) findings.push({ kind: 'cannot tell', channels: unclear });
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

/**
 * Channels that sound from speakers no other channel was left for: a second one beside their own, or
 * two of them when no single speaker explained the channel. By channel, the speakers to add.
 */
function findDoubled(
  { heard, without }: Pairing,
  sounds: readonly HeardOnWalk[],
  explain: (heard: HeardOnWalk, from: readonly ChannelLabel[]) => number,
): Map<ChannelLabel, ChannelLabel[]> {
  const doubled = new Map<ChannelLabel, ChannelLabel[]>();
  const left = new Set(without);
  for (const speaker of without) {
    if (!left.has(speaker)) continue;
    const others = sounds.flatMap((sound) => {
      const own = heard.find(({ channel }) => channel === sound.channel)?.speaker;
      const alone = own === undefined ? 0 : explain(sound, [own]);
      const firsts = own === undefined ? [...left].filter((one) => one !== speaker) : [own];
      return firsts.map((first) => ({
        channel: sound.channel,
        // Of two free speakers the channel's own, if it is one of them, counts as the first.
        added: first === sound.channel || own !== undefined ? speaker : first,
        taken: [first, speaker],
        gain: explain(sound, [first, speaker]) - alone,
      }));
    });
    const [best] = others.sort((a, b) => b.gain - a.gain);
    if (!best || best.gain < doubledFrom) continue;
    doubled.set(best.channel, [...(doubled.get(best.channel) ?? []), best.added]);
    for (const one of best.taken) left.delete(one);
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
