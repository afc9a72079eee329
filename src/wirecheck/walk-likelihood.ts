import type { ChannelLabel } from '../system/channel';
import { isSub } from '../system/channel-names';
import type { WalkStop } from './walk';

/**
 * How much likelier each channel (column) is to come from the speaker at hand (row) than from
 * another one, in nats.
 *
 * A channel is some 10 to 15 dB louder at 30 cm from its speaker than in the room, whatever its own gain:
 * level minus the channel's median over all stops is taken as normal about `nearDb` there and about
 * 0 elsewhere, with the same spread, so the ratio is linear in it. It is also some milliseconds
 * earlier than elsewhere; the delay of a stop and of a channel drop out of the double medians.
 * Common practice for the numbers; both terms are bounded, so that one odd reading cannot rule.
 */
const nearDb = 11;
const spreadDb = 4;
const mostByLevel = 8;
const nearSeconds = 0.004;
const natsASecond = 500;
const mostByTime = 2;

/** Rows as `stops`, columns as `channels`; a channel not heard at a stop is as unlikely as can be. */
export function walkLikelihood(
  stops: readonly WalkStop[],
  channels: readonly ChannelLabel[],
): number[][] {
  const sounds = stops.map(({ sounds }) =>
    channels.map((channel) => sounds.find((sound) => sound.channel === channel) ?? null),
  );
  const levels = centre(sounds.map((row) => row.map((sound) => sound?.levelDb ?? null)));
  const times = centre(
    centreRows(
      sounds.map((row) =>
        row.map((sound) => (sound && !isSub(sound.channel) ? sound.arrivalSeconds : null)),
      ),
    ),
  );
  return sounds.map((row, at) =>
    row.map((_, column) => {
      const level = levels[at]?.[column] ?? null;
      const time = times[at]?.[column] ?? null;
      if (level === null) return -mostByLevel;
      const byLevel = (level - nearDb / 2) * (nearDb / spreadDb ** 2);
      const byTime = time === null ? 0 : (-time - nearSeconds / 2) * natsASecond;
      return bound(byLevel, mostByLevel) + bound(byTime, mostByTime);
    }),
  );
}

type Matrix = readonly (readonly (number | null)[])[];

/** Each column less its median. */
function centre(matrix: Matrix): Matrix {
  const columns = matrix[0]?.length ?? 0;
  const medians = Array.from({ length: columns }, (_, column) =>
    median(matrix.map((row) => row[column] ?? null)),
  );
  return matrix.map((row) =>
    row.map((value, column) => (value === null ? null : value - (medians[column] ?? 0))),
  );
}

function centreRows(matrix: Matrix): Matrix {
  return matrix.map((row) => {
    const middle = median(row);
    return row.map((value) => (value === null ? null : value - middle));
  });
}

/** Lower median of what is there; 0 when nothing is. */
function median(values: readonly (number | null)[]): number {
  const there = values.filter((value) => value !== null).sort((a, b) => a - b);
  return there[Math.floor((there.length - 1) / 2)] ?? 0;
}

function bound(value: number, most: number): number {
  return Math.min(most, Math.max(-most, value));
}
