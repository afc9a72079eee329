import type { NoiseRequest } from '../../../src/noise/noise-state';
import type { BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { createMemory } from '../memory';
import { namedBand, presetOf } from './named-bands';

/** What the tuner wants to hear next; a null level follows the level of the takes. */
export type NoiseWishes = Omit<NoiseRequest, 'gainDb' | 'channel'> & {
  readonly gainDb: number | null;
  readonly channel: ChannelLabel | null;
};

export const noiseWishes = createMemory<NoiseWishes>(() => ({
  kind: 'noise',
  channel: null,
  lowHz: namedBand('full').lowHz,
  highHz: namedBand('full').highHz,
  gainDb: null,
  bandsPerOctave: 3,
  averagingSeconds: 15,
}));

/** The request that fits the plan and the cap: what is asked of the bench. */
export function requestOf(wishes: NoiseWishes, { layout, document }: BenchState): NoiseRequest {
  const labels = layout.channels.map(({ label }) => label);
  const wanted = labels.find((label) => label === wishes.channel);
  const { gainDb, capDb } = document.live;
  return {
    ...wishes,
    channel: wanted ?? labels[0] ?? 'FL',
    gainDb: Math.min(capDb, wishes.gainDb ?? gainDb),
  };
}

/** The trade's band of a main does not suit a sub, nor the other way round: it changes with it. */
export function forChannel(
  wishes: NoiseWishes,
  channel: ChannelLabel,
  { layout }: BenchState,
): NoiseWishes {
  const isSub = layout.channels.find(({ label }) => label === channel)?.kind === 'sub';
  const preset = presetOf(wishes.lowHz, wishes.highHz);
  const other =
    isSub && preset === 'mains'
      ? namedBand('sub')
      : !isSub && preset === 'sub'
        ? namedBand('mains')
        : null;
  return {
    ...wishes,
    channel,
    ...(other ? { lowHz: other.lowHz, highHz: other.highHz } : {}),
  };
}
