import type { ChannelLabel } from '../system/channel';

/** One speaker's sweeps in one take. */
export interface SoundSource {
  readonly takeId: string;
  readonly channel: ChannelLabel;
}

/** How much of a response is looked at. */
export type ResponseWindow =
  | { readonly kind: 'whole' }
  /** From the arrival on, milliseconds. */
  | { readonly kind: 'gate'; readonly milliseconds: number }
  /** From the arrival on, periods of each frequency. */
  | { readonly kind: 'cycles'; readonly cycles: number };

/** What can be asked of the sound of takes. */
export type InspectRequest =
  | {
      readonly kind: 'responses';
      readonly sources: readonly SoundSource[];
      readonly smoothing: string;
      readonly window: ResponseWindow;
    }
  | { readonly kind: 'phase'; readonly sources: readonly SoundSource[] }
  | { readonly kind: 'time'; readonly sources: readonly SoundSource[] }
  | { readonly kind: 'decay'; readonly source: SoundSource; readonly volume: number | null }
  | { readonly kind: 'bass'; readonly source: SoundSource }
  | { readonly kind: 'impulse'; readonly source: SoundSource };
