import type { ChannelLabel } from '../system/channel';

/** What one channel sounded like while the microphone was held to one speaker. */
export interface WalkSound {
  readonly channel: ChannelLabel;
  /** Null when it did not rise over the noise. */
  readonly levelDb: number | null;
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

/** What the walk found of the wiring. Labels of speakers say where they stand. */
export type WalkFinding =
  /** channels[i] sounds from the speaker of channels[i + 1], the last from the first. */
  | { readonly kind: 'exchanged'; readonly channels: readonly ChannelLabel[] }
  /** The channel sounds from another speaker, whose own channel does not sound from here. */
  | { readonly kind: 'elsewhere'; readonly channel: ChannelLabel; readonly from: ChannelLabel }
  | { readonly kind: 'silent'; readonly channel: ChannelLabel }
  /** One channel sounds from several speakers. */
  | {
      readonly kind: 'doubled';
      readonly channel: ChannelLabel;
      readonly from: readonly ChannelLabel[];
    }
  /** A speaker at which no channel stands out. */
  | { readonly kind: 'mute speaker'; readonly speaker: ChannelLabel }
  | { readonly kind: 'inverted'; readonly speaker: ChannelLabel }
  | { readonly kind: 'cannot tell'; readonly channels: readonly ChannelLabel[] };

/** The wiring as heard. No findings: every channel sounds from its own speaker. */
export interface WalkResult {
  /** Speaker each channel was found at, and by how much it beats every other explanation (nats). */
  readonly heard: readonly {
    readonly channel: ChannelLabel;
    readonly speaker: ChannelLabel;
    readonly margin: number;
  }[];
  readonly findings: readonly WalkFinding[];
}
