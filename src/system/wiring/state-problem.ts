import type { ChannelLabel } from '../channel';
import { partnerLabel } from '../partner-label';
import type { ProcessorSheet } from '../sheet/processor-sheet';
import { orderRules } from './order-rules';
import { outputIndex, type Closed, type WiringProblem, type WiringRule } from './wiring-problem';

/** Turns the roles of a layout and a sheet into a problem; every rule comes from the sheet. */
export function stateProblem(roles: readonly ChannelLabel[], sheet: ProcessorSheet): WiringProblem {
  const ranks = roles.map((role) =>
    sheet.outputs.map((output) => output.roles.findIndex(({ channel }) => channel === role)),
  );
  const partners = roles.map((role) => {
    const partner = partnerLabel(role);
    return partner === null ? -1 : roles.indexOf(partner);
  });
  const units = outputUnits(sheet);
  return {
    roles,
    outputCount: sheet.outputs.length,
    ranks,
    partners,
    rules: [
      ...wiredRules(partners),
      ...pairRules(sheet),
      ...orderRules(roles, sheet),
      ...units.map((outputs) => ({ kind: 'one role', outputs }) as const),
      ...exclusiveRules(roles, sheet),
      ...onlyWithoutRules(roles, sheet, units),
    ],
  };
}

/** Paired outputs together, the others alone. */
function outputUnits(sheet: ProcessorSheet): number[][] {
  const pairs = sheet.pairs.map((pair) => pair.map((id) => outputIndex(sheet, id)));
  const alone = sheet.outputs.map((_, index) => index).filter((o) => !pairs.flat().includes(o));
  return [...pairs, ...alone.map((output) => [output])];
}

function wiredRules(partners: readonly number[]): WiringRule[] {
  return partners.flatMap((partner, channel) => {
    if (partner >= 0 && partner < channel) return [];
    return [{ kind: 'wired', channels: partner < 0 ? [channel] : [channel, partner] } as const];
  });
}

function pairRules(sheet: ProcessorSheet): WiringRule[] {
  return sheet.pairs.map(([first, second]) => ({
    kind: 'pair',
    outputs: [outputIndex(sheet, first), outputIndex(sheet, second)],
  }));
}

function exclusiveRules(roles: readonly ChannelLabel[], sheet: ProcessorSheet): WiringRule[] {
  return sheet.exclusive.map(({ name, choices }) => ({
    kind: 'exclusive',
    name,
    choices: choices.map((choice) => ({
      channels: roles.flatMap((role, index) => (choice.channels.includes(role) ? [index] : [])),
      outputs: (choice.outputs ?? sheet.outputs.map(({ id }) => id)).map((id) =>
        outputIndex(sheet, id),
      ),
    })),
  }));
}

function onlyWithoutRules(
  roles: readonly ChannelLabel[],
  sheet: ProcessorSheet,
  units: readonly (readonly number[])[],
): WiringRule[] {
  return units.flatMap((unit) => {
    const present = new Set<ChannelLabel>();
    const closed: Closed[] = [];
    for (const output of unit) {
      for (const { channel, onlyWithout = [] } of sheet.outputs[output]?.roles ?? []) {
        const found = onlyWithout.filter((label) => roles.includes(label));
        if (found.length === 0 || !roles.includes(channel)) continue;
        closed.push([roles.indexOf(channel), output]);
        for (const label of found) present.add(label);
      }
    }
    if (closed.length === 0) return [];
    return [{ kind: 'only without', closed, present: [...present] } as const];
  });
}
