import type { ChannelLabel } from '../system/channel';

/** A microphone held a hand's width or less from a speaker, where the room is hardly heard. */
export interface CloseTo {
  readonly channel: ChannelLabel;
  /** The cone of a box whose port plays elsewhere, unheard: the fit allows for it. */
  readonly coneOnly: boolean;
}
