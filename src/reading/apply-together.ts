import { layFit } from './read-curves';
import type { ChannelReading, Readings } from './reading';
import { togetherOf, type RolloffTogether } from './rolloff-together';

/**
 * Readings whose roll-offs are those read together, where there are such, with their curves laid on
 * the responses of this position; all else stays. Equal readings give the very same objects.
 */
export function applyTogether(readings: Readings, together: readonly RolloffTogether[]): Readings {
  if (together.length === 0) return readings;
  return {
    ...readings,
    channels: readings.channels.map((reading) => {
      const one = togetherOf(together, reading.channel);
      return one?.finding.rolloff ? applied(reading, one) : reading;
    }),
  };
}

interface Applied {
  readonly together: RolloffTogether;
  readonly reading: ChannelReading;
}

const known = new WeakMap<ChannelReading, Applied>();

function applied(reading: ChannelReading, together: RolloffTogether): ChannelReading {
  const before = known.get(reading);
  if (before?.together === together) return before.reading;
  const { rolloff, curve } = together.finding;
  const { curves } = reading;
  const fit = curves && curve ? layFit(curves.response, curve, together.order.isSub) : null;
  const next = { ...reading, rolloff, curves: curves && { ...curves, fit } };
  known.set(reading, { together, reading: next });
  return next;
}
