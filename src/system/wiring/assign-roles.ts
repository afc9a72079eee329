import type { ChannelLabel, Layout } from '../channel';
import type { HeightNaming, HeightPair } from '../sheet/processor-sheet';

/** A declared loudspeaker and what the processor calls it. */
export interface ChannelRole {
  readonly channel: ChannelLabel;
  readonly role: ChannelLabel;
}

/** Roles for the channels of a layout; heights without one when the sheet names none. */
export interface AssignedRoles {
  readonly roles: readonly ChannelRole[];
  readonly unnamed: readonly ChannelLabel[];
  readonly heightPairs: number;
}

const heights: readonly (readonly [HeightPair, ChannelLabel, ChannelLabel])[] = [
  ['front', 'TpFL', 'TpFR'],
  ['middle', 'TpSiL', 'TpSiR'],
  ['back', 'TpBL', 'TpBR'],
];

/** Gives the declared height pairs, front to back, the names the sheet has for so many pairs. */
export function assignRoles(layout: Layout, naming: HeightNaming): AssignedRoles {
  const labels = layout.channels.map((channel) => channel.label);
  const declared = heights.filter(([, left, right]) =>
    labels.some((label) => label === left || label === right),
  );
  const names = namesFor(declared.length, naming);
  const roleOf = new Map<ChannelLabel, ChannelLabel>();
  for (const [index, [, left, right]] of declared.entries()) {
    const named = heights.find(([pair]) => pair === names[index]);
    if (named) roleOf.set(left, named[1]).set(right, named[2]);
  }
  const isHeight = (label: ChannelLabel) => heights.some((pair) => pair.includes(label));
  const unnamed = labels.filter((label) => isHeight(label) && !roleOf.has(label));
  return {
    roles: labels
      .filter((label) => !unnamed.includes(label))
      .map((label) => ({ channel: label, role: roleOf.get(label) ?? label })),
    unnamed,
    heightPairs: declared.length,
  };
}

function namesFor(pairs: number, naming: HeightNaming): readonly HeightPair[] {
  if (pairs === 1) return naming['1'] ?? [];
  if (pairs === 2) return naming['2'] ?? [];
  return pairs === 3 ? (naming['3'] ?? []) : [];
}
