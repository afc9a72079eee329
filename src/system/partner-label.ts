import type { ChannelLabel } from './channel';

const pairs: readonly (readonly [ChannelLabel, ChannelLabel])[] = [
  ['FL', 'FR'],
  ['SiL', 'SiR'],
  ['BL', 'BR'],
  ['FLw', 'FRw'],
  ['TpFL', 'TpFR'],
  ['TpSiL', 'TpSiR'],
  ['TpBL', 'TpBR'],
];

const partners = new Map(pairs.flatMap(([left, right]) => [[left, right] as const, [right, left]]));

/** The other channel of a left and right pair; null for the centre and for subs. */
export function partnerLabel(label: ChannelLabel): ChannelLabel | null {
  return partners.get(label) ?? null;
}

/** The other channel of a pair; the centre and a sub are their own. */
export function partnerOf(label: ChannelLabel): ChannelLabel {
  return partnerLabel(label) ?? label;
}
