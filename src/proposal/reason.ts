import type { ChannelReading } from '../reading/reading';
import type { ChannelLabel } from '../system/channel';

/** A reading that a sentence rests on, so that a screen can open it. */
export interface Ground {
  readonly channel: ChannelLabel;
  readonly field: Extract<
    keyof ChannelReading,
    'arrivalSeconds' | 'distanceMetres' | 'levelDb' | 'polarity' | 'rolloff' | 'distortion' | 'bass'
  >;
}

/** A sentence of the session's own numbers, with the readings it rests on; none for a rule. */
export interface Reason {
  readonly sentence: string;
  readonly grounds: readonly Ground[];
}

/** One field of several channels' readings. */
export function groundsOf(channels: readonly ChannelLabel[], field: Ground['field']): Ground[] {
  return channels.map((channel) => ({ channel, field }));
}

/** The sentences one after another. */
export function sayReasons(reasons: readonly Reason[]): string {
  return reasons.map(({ sentence }) => sentence).join(' ');
}
