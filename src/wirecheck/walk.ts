import type { ChannelLabel } from '../system/channel';
import type { HeardChannel, WiringFinding } from './wiring-finding';

/** What one channel sounded like while the microphone was held to one speaker. */
export interface WalkSound {
  readonly channel: ChannelLabel;
  /** From 300 to 1500 Hz; null when it did not rise over the noise there. */
  readonly levelDb: number | null;
  /** From 40 to 120 Hz, where subs play; null when it did not rise over the noise there. */
  readonly lowDb: number | null;
  /** On one clock for all channels heard at this speaker; null when it cannot be told. */
  readonly arrivalSeconds: number | null;
  readonly polarity: 'normal' | 'inverted' | 'cannot tell';
}

/** The microphone within about 30 cm of a speaker while all channels sounded in turn. */
export interface WalkStop {
  /** The speaker it was held to. */
  readonly speaker: ChannelLabel;
  readonly sounds: readonly WalkSound[];
}

/** The wiring as heard. No findings: every channel sounds from its own speaker. */
export interface WalkResult {
  /** Speaker each channel was found at, and by how much it beats every other explanation (nats). */
  readonly heard: readonly (HeardChannel & { readonly margin: number })[];
  readonly findings: readonly WiringFinding[];
}
