import type { ChannelLabel, Layout } from './channel';

/**
 * Speaker bits of WAVE_FORMAT_EXTENSIBLE in rising order. The sub of a take's "Sub 1" plays
 * through LFE; channels that are not here have no bit and stand last in a file.
 * Source: the format's published definition (SPEAKER_FRONT_LEFT … SPEAKER_TOP_BACK_RIGHT).
 */
export const speakerBits: readonly (readonly [ChannelLabel, number])[] = [
  ['FL', 0x1],
  ['FR', 0x2],
  ['FC', 0x4],
  ['Sub 1', 0x8],
  ['BL', 0x10],
  ['BR', 0x20],
  ['SiL', 0x200],
  ['SiR', 0x400],
  ['TpFL', 0x1000],
  ['TpFR', 0x4000],
  ['TpBL', 0x8000],
  ['TpBR', 0x20000],
];

/** dwChannelMask of a WAV with a layout's channels, or with these labels: 5.1 60Fh, 7.1 63Fh. */
export function channelMask(channels: Layout | readonly ChannelLabel[]): number {
  const labels = 'channels' in channels ? channels.channels.map(({ label }) => label) : channels;
  let mask = 0;
  for (const [label, bit] of speakerBits) if (labels.includes(label)) mask |= bit;
  return mask;
}
