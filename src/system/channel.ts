/** Labels of IEC 62574 for speaker channels; physical subs are Sub 1 … Sub 4. */
export type ChannelLabel =
  | 'FL'
  | 'FR'
  | 'FC'
  | 'SiL'
  | 'SiR'
  | 'BL'
  | 'BR'
  | 'FLw'
  | 'FRw'
  | 'TpFL'
  | 'TpFR'
  | 'TpSiL'
  | 'TpSiR'
  | 'TpBL'
  | 'TpBR'
  | 'Sub 1'
  | 'Sub 2'
  | 'Sub 3'
  | 'Sub 4';

/** Speakers that share one crossover setting. */
export type GroupId =
  | 'fronts'
  | 'centre'
  | 'wides'
  | 'sides'
  | 'backs'
  | 'front heights'
  | 'middle heights'
  | 'back heights'
  | 'subs';

/** One loudspeaker as declared. Angles in degrees, ITU-R BS.2051 sense: positive to the left. */
export interface Channel {
  readonly label: ChannelLabel;
  /** Plain name, such as "side left". */
  readonly name: string;
  readonly group: GroupId;
  readonly kind: 'bed' | 'height' | 'sub';
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
  /** Ranges of BS.2051 where it gives one, else null. */
  readonly azimuthRange: readonly [number, number] | null;
  readonly elevationRange: readonly [number, number] | null;
}

/** A declared loudspeaker system; channels stand in the order of the take's WAV channels. */
export interface Layout {
  /**
   * Canonical, one name a set of speakers: bed.subs.heights, such as "5.2.4" or "5.1", when that
   * name stands for these speakers, else their labels, such as "FL FR FC SiL SiR Sub1 TpSiL TpSiR".
   */
  readonly name: string;
  /** bed.subs.heights always, for people. */
  readonly title: string;
  readonly channels: readonly Channel[];
}
