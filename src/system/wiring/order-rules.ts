import type { ChannelLabel } from '../channel';
import type { ProcessorSheet } from '../sheet/processor-sheet';
import { outputIndex, type Closed, type WiringRule } from './wiring-problem';

/** The rules of filling; a chain of channels is a rule only where the layout breaks it. */
export function orderRules(roles: readonly ChannelLabel[], sheet: ProcessorSheet): WiringRule[] {
  return [
    ...sheet.filling.outputs.map((chain) => ({
      kind: 'output order' as const,
      stages: chain.map((stage) => stage.map((id) => outputIndex(sheet, id))),
    })),
    ...sheet.filling.channels.flatMap((chain) => brokenChain(roles, chain, sheet)),
  ];
}

/** What the layout has in a stage although a stage before it is not whole, goes nowhere. */
function brokenChain(
  roles: readonly ChannelLabel[],
  chain: readonly (readonly ChannelLabel[])[],
  sheet: ProcessorSheet,
): WiringRule[] {
  const missing: ChannelLabel[] = [];
  const late: ChannelLabel[] = [];
  for (const stage of chain) {
    if (missing.length > 0) late.push(...stage.filter((label) => roles.includes(label)));
    if (late.length === 0) missing.push(...stage.filter((label) => !roles.includes(label)));
  }
  if (late.length === 0) return [];
  const closed = late.flatMap((label) =>
    sheet.outputs.map((_, output): Closed => [roles.indexOf(label), output]),
  );
  return [{ kind: 'channel order', closed, missing }];
}
