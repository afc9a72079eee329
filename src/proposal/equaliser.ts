import type { ChannelLabel } from '../system/channel';
import type { Reason } from './reason';

/** One peaking section of the W3C cookbook. */
export interface EqualiserBand {
  readonly hz: number;
  readonly q: number;
  readonly gainDb: number;
}

/** Sections for one channel and what they would do at every seat. */
export interface ChannelEqualiser {
  readonly channel: ChannelLabel;
  readonly bands: readonly EqualiserBand[];
  /** Rms deviation from the smooth target before and after, dB, one per seat. */
  readonly beforeDb: readonly number[];
  readonly afterDb: readonly number[];
  readonly reasons: readonly Reason[];
}

/** What a few parametric sections could do below the Schroeder frequency; last in order. */
export interface EqualiserAdvice {
  /** Above this it is left alone, Hz. */
  readonly upToHz: number;
  readonly channels: readonly ChannelEqualiser[];
}
