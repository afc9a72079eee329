import type { ChannelReading } from '../../src/reading/reading';
import type { Channel, Layout } from '../../src/system/channel';

/** Whatever is measured so far. */
export interface MeasuredChannels {
  readonly channels: readonly ChannelReading[];
}

/** A speaker where it stands on the plan: metres from the listener, right and back positive. */
export interface PlacedSpeaker {
  readonly channel: Channel;
  readonly rightMetres: number;
  readonly backMetres: number;
  /** Straight line from the microphone; null until it is measured, and when that cannot be. */
  readonly distanceMetres: number | null;
  /** Whether it is drawn at its measured distance. Subs are not: their delay is no distance. */
  readonly located: boolean;
}

/** Unmeasured subs stand farther out and heights farther in, so that none hides another. */
const nominalShare = { bed: 1, height: 0.8, sub: 1.25 } as const;

/**
 * Puts every speaker of a layout on the plan seen from above: measured distance where there is
 * one, else and for subs the nominal distance; declared direction always. A height stands at the
 * horizontal share of its distance.
 */
export function placeSpeakers(
  layout: Layout,
  readings: MeasuredChannels | null,
  nominalMetres: number,
): PlacedSpeaker[] {
  return layout.channels.map((channel) => {
    const reading = readings?.channels.find((one) => one.channel === channel.label);
    const measured = reading?.distanceMetres ?? null;
    const distanceMetres = measured !== null && measured > 0 ? measured : null;
    const nominal = nominalMetres * nominalShare[channel.kind];
    const azimuth = (channel.azimuthDegrees * Math.PI) / 180;
    const elevation = (channel.elevationDegrees * Math.PI) / 180;
    const located = distanceMetres !== null && channel.kind !== 'sub';
    const horizontal = (located ? distanceMetres : nominal) * Math.cos(elevation);
    return {
      channel,
      rightMetres: -Math.sin(azimuth) * horizontal,
      backMetres: -Math.cos(azimuth) * horizontal,
      distanceMetres,
      located,
    };
  });
}

/** Room kept beside and above the outermost speakers for their labels, pixels. */
const labelRoom = { beside: 48, above: 34 };

/**
 * Pixels a metre: the widest that keeps every speaker and its label inside a drawing of half width
 * `reach` and no higher than wide.
 */
export function scaleOf(placed: readonly PlacedSpeaker[], reach: number): number {
  const beside = Math.max(0.5, ...placed.map((one) => Math.abs(one.rightMetres)));
  const along = Math.max(0.5, ...placed.map((one) => Math.abs(one.backMetres)));
  return Math.min((reach - labelRoom.beside) / beside, (reach - labelRoom.above) / along);
}

const ringSteps = [1, 2, 5, 10, 20, 50];

/** Distance rings, metres: six at most, every metre while that suffices. */
export function ringRadii(placed: readonly PlacedSpeaker[]): number[] {
  const farthest = Math.max(1, ...placed.map((one) => Math.hypot(one.rightMetres, one.backMetres)));
  const step = ringSteps.find((one) => farthest / one <= 6) ?? 100;
  const rings: number[] = [];
  for (let radius = step; radius <= farthest + step * 0.3; radius += step) rings.push(radius);
  return rings;
}
