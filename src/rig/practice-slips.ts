import type { ChannelLabel, GroupId } from '../system/channel';
import { partnerOf } from '../system/partner-label';
import type { ProcessorSettings } from '../system/processor-settings';

/** Something typed or left wrong on purpose. */
export type PracticeSlip =
  /** Distances of left and right typed for each other, of the pairs these channels belong to. */
  | { readonly kind: 'wrong side'; readonly channels: readonly ChannelLabel[] }
  /** Distances counted in feet that were meant in metres, or the other way round. */
  | {
      readonly kind: 'wrong unit';
      readonly taken: 'feet' | 'metres';
      readonly channels: readonly ChannelLabel[];
    }
  | { readonly kind: 'wrong sign'; readonly channels: readonly ChannelLabel[] }
  | { readonly kind: 'full range'; readonly group: GroupId }
  /** The sub's own low-pass is still on. */
  | {
      readonly kind: 'own low-pass';
      readonly channels: readonly ChannelLabel[];
      readonly hz: number;
      readonly order: number;
    }
  | { readonly kind: 'inverted'; readonly channels: readonly ChannelLabel[] }
  /** An equaliser still lifts the treble and the middle bass of these channels. */
  | {
      readonly kind: 'equaliser';
      readonly channels: readonly ChannelLabel[];
      readonly gainDb: number;
    }
  /** Whatever is louder than a threshold, dB re full scale, is turned down by a share of the excess. */
  | { readonly kind: 'dynamics'; readonly thresholdDb: number; readonly share: number }
  /** The LFE channel is not replayed as loud as it should be. */
  | { readonly kind: 'LFE level'; readonly offDb: number }
  /** Every channel sounds from another one as well. */
  | { readonly kind: 'upmixing'; readonly to: ChannelLabel; readonly gainDb: number };

const metresInFoot = 0.3048;

/** What a processor counts with when slips were made in typing right settings. */
export function slipInTyping(
  typed: ProcessorSettings,
  slips: readonly PracticeSlip[],
): ProcessorSettings {
  return slips.reduce(slipOnce, typed);
}

function slipOnce(typed: ProcessorSettings, slip: PracticeSlip): ProcessorSettings {
  const { distanceMetres, trimDb, crossoverHz, inverted, lfe } = typed;
  switch (slip.kind) {
    case 'wrong side': {
      const exchanged = [...new Set(slip.channels.flatMap((one) => [one, partnerOf(one)]))];
      return {
        ...typed,
        distanceMetres: { ...distanceMetres, ...pick(exchanged, distanceMetres) },
      };
    }
    case 'wrong unit': {
      const factor = slip.taken === 'feet' ? metresInFoot : 1 / metresInFoot;
      return { ...typed, distanceMetres: scaled(distanceMetres, slip.channels, factor) };
    }
    case 'wrong sign':
      return { ...typed, trimDb: scaled(trimDb, slip.channels, -1) };
    case 'full range':
      return { ...typed, crossoverHz: { ...crossoverHz, [slip.group]: null } };
    case 'inverted': {
      const turned = slip.channels.filter((label) => !inverted.includes(label));
      const others = inverted.filter((label) => !slip.channels.includes(label));
      return { ...typed, inverted: [...others, ...turned] };
    }
    case 'LFE level':
      return { ...typed, lfe: { ...lfe, gainDb: lfe.gainDb + slip.offDb } };
    default:
      return typed;
  }
}

type Numbers = ProcessorSettings['distanceMetres'];

/** Each channel's number taken from its partner. */
function pick(channels: readonly ChannelLabel[], numbers: Numbers): Numbers {
  return Object.fromEntries(
    channels.flatMap((label) => {
      const value = numbers[partnerOf(label)];
      return value === undefined ? [] : [[label, value]];
    }),
  );
}

function scaled(numbers: Numbers, channels: readonly ChannelLabel[], factor: number): Numbers {
  const changed = channels.flatMap((label) => {
    const value = numbers[label];
    return value === undefined ? [] : [[label, factor * value]];
  });
  return { ...numbers, ...Object.fromEntries(changed) };
}
