import type { ChannelLabel } from '../system/channel';

/** Which speaker a channel was found at. */
export interface HeardChannel {
  readonly channel: ChannelLabel;
  readonly speaker: ChannelLabel;
}

/** What an ear check or a walk found of the wiring. Labels of speakers say where they stand. */
export type WiringFinding =
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
  /** Several channels sound from one speaker. */
  | {
      readonly kind: 'shared speaker';
      readonly speaker: ChannelLabel;
      readonly channels: readonly ChannelLabel[];
    }
  /** A speaker at which no channel stands out. */
  | { readonly kind: 'mute speaker'; readonly speaker: ChannelLabel }
  | { readonly kind: 'inverted'; readonly speaker: ChannelLabel }
  /** From the seat these arrive, or sound, as if they were in each other's places. */
  | { readonly kind: 'suspect'; readonly channels: readonly ChannelLabel[] }
  | { readonly kind: 'cannot tell'; readonly channels: readonly ChannelLabel[] };
