import type { Arrival } from '../../dsp/timing/arrival';
import type { ChannelLabel } from '../system/channel';

/** A delay the processor adds to a channel; only differences between channels mean anything. */
export interface ProcessorDelay {
  readonly seconds: number;
  /** It lies this near, seconds. */
  readonly halfSeconds: number;
}

/** Speed of sound that processors count with, m/s, and how far they differ; common practice. */
const countedMetresPerSecond = 343;
const speedShare = 0.01;
/** Delays come in whole samples of 48 kHz. */
const halfSampleSeconds = 0.5 / 48000;

/**
 * Delays that typed distances put into the channels, (largest − own)/343 m/s: those with a distance
 * beside each other, those without beside each other. Seen from the reference speaker, the delay of
 * the other kind is not known, and such channels are null.
 */
export function processorDelays(
  labels: readonly ChannelLabel[],
  reference: ChannelLabel,
  distanceMetres: Readonly<Partial<Record<ChannelLabel, number>>>,
): ReadonlyMap<ChannelLabel, ProcessorDelay | null> {
  const typed = labels.flatMap((label) => distanceMetres[label] ?? []);
  const farthest = Math.max(...typed, 0);
  const isTyped = distanceMetres[reference] !== undefined;
  return new Map(
    labels.map((label) => {
      const metres = distanceMetres[label];
      if (typed.length === 0) return [label, noDelay];
      if ((metres !== undefined) !== isTyped) return [label, null];
      return [label, metres === undefined ? noDelay : delayOf(farthest - metres)];
    }),
  );
}

export const noDelay: ProcessorDelay = { seconds: 0, halfSeconds: 0 };

function delayOf(metres: number): ProcessorDelay {
  const seconds = metres / countedMetresPerSecond;
  return { seconds, halfSeconds: seconds * speedShare + (metres > 0 ? halfSampleSeconds : 0) };
}

/** An arrival as it would be without the delay. Its places in the samples stay where they are. */
export function takeOutDelay(arrival: Arrival, { seconds, halfSeconds }: ProcessorDelay): Arrival {
  if (seconds === 0) return arrival;
  const [low, high] = arrival.interval;
  return {
    ...arrival,
    seconds: arrival.seconds - seconds,
    interval: [low - seconds - halfSeconds, high - seconds + halfSeconds],
    strongestSeconds: arrival.strongestSeconds - seconds,
  };
}
