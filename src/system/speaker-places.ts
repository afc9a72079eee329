import type { ChannelLabel } from './channel';
import { isSub } from './channel-names';
import { partnerOf } from './partner-label';

/** Where a loudspeaker stands: degrees, positive to the left and upward; ranges where given. */
export interface SpeakerPlace {
  readonly azimuth: number;
  readonly elevation: number;
  readonly azimuthRange: readonly [number, number] | null;
  readonly elevationRange: readonly [number, number] | null;
}

type Places = Readonly<Partial<Record<ChannelLabel, SpeakerPlace>>>;

/**
 * Loudspeaker positions of ITU-R BS.2051-2 (2018), left side and centre; the right side mirrors
 * them. Read in the open reference implementation of ITU-R BS.2127, not in the standard itself.
 * Behind each: the standard's label and the system it is taken from.
 */
const always: Places = {
  FC: { azimuth: 0, elevation: 0, azimuthRange: null, elevationRange: null }, // M+000
  FLw: { azimuth: 60, elevation: 0, azimuthRange: [45, 60], elevationRange: [0, 5] }, // M+060 9+10+3
  TpSiL: { azimuth: 90, elevation: 30, azimuthRange: null, elevationRange: [30, 45] }, // U+090 9+10+3
};

/** Two surrounds, up to four heights. */
const fewSurrounds: Places = {
  FL: { azimuth: 30, elevation: 0, azimuthRange: null, elevationRange: null }, // M+030 4+5+0
  SiL: { azimuth: 110, elevation: 0, azimuthRange: [100, 120], elevationRange: [0, 15] }, // M+110 0+5+0
  TpFL: { azimuth: 30, elevation: 30, azimuthRange: [30, 45], elevationRange: [30, 55] }, // U+030 4+5+0
  TpBL: { azimuth: 110, elevation: 30, azimuthRange: [100, 135], elevationRange: [30, 55] }, // U+110 4+5+0
};

/** Sides and backs. */
const manySurrounds: Places = {
  FL: { azimuth: 30, elevation: 0, azimuthRange: [30, 45], elevationRange: null }, // M+030 0+7+0
  SiL: { azimuth: 90, elevation: 0, azimuthRange: [85, 110], elevationRange: null }, // M+090 0+7+0
  BL: { azimuth: 135, elevation: 0, azimuthRange: [120, 150], elevationRange: null }, // M+135 0+7+0
};

/** Heights above sides and backs, and wherever six heights share the ceiling. */
const manyHeights: Places = {
  TpFL: { azimuth: 45, elevation: 30, azimuthRange: [30, 45], elevationRange: [30, 55] }, // U+045 4+7+0
  TpBL: { azimuth: 135, elevation: 30, azimuthRange: [100, 150], elevationRange: [30, 55] }, // U+135 4+7+0
};

/** BS.2051 gives subs no place; these are corners for a drawing to start from. */
const subAzimuths = [45, -45, 160, -160];

/**
 * The nominal place of a loudspeaker, which depends on whether backs and six heights are there.
 * Throws RangeError for a label that has no place in such a system.
 */
export function speakerPlace(
  label: ChannelLabel,
  hasBacks: boolean,
  heights: number,
): SpeakerPlace {
  if (isSub(label)) {
    const azimuth = subAzimuths[Number(label.slice(4)) - 1] ?? 0;
    return { azimuth, elevation: 0, azimuthRange: null, elevationRange: null };
  }
  const places: Places = {
    ...always,
    ...fewSurrounds,
    ...(hasBacks ? manySurrounds : {}),
    ...(hasBacks || heights === 6 ? manyHeights : {}),
  };
  const place = places[label];
  if (place) return place;
  const left = places[partnerOf(label)];
  if (!left) throw new RangeError(`no place for ${label} in this layout`);
  const range = left.azimuthRange;
  return { ...left, azimuth: -left.azimuth, azimuthRange: range && [-range[1], -range[0]] };
}
