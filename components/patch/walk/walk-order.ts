import type { Channel, ChannelLabel, Layout } from '../../../src/system/channel';

/** Degrees to the left of ahead where the walk begins, so that the front left speaker comes first. */
const beginDegrees = 50;

/** A short way past all speakers: once round the room clockwise near the floor, then the heights. */
export function walkOrder({ channels }: Layout): ChannelLabel[] {
  const along = ({ azimuthDegrees }: Channel): number =>
    (beginDegrees - azimuthDegrees + 720) % 360;
  const round = (wanted: boolean): Channel[] =>
    channels
      .filter(({ kind }) => (kind === 'height') === wanted)
      .sort((a, b) => along(a) - along(b));
  return [...round(false), ...round(true)].map(({ label }) => label);
}
