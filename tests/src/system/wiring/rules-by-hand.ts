import type { ChannelLabel } from '../../../../src/system/channel';
import type { ProcessorSheet } from '../../../../src/system/sheet/processor-sheet';

/** Ids of outputs by the role they carry. */
export type Places = ReadonlyMap<ChannelLabel, string>;

/** FL ↔ FR, TpSiL ↔ TpSiR, FLw ↔ FRw; '' for the centre and subs. */
function otherSide(label: string): string {
  if (label.startsWith('Sub') || label === 'FC') return '';
  return label.replace(/[LR](?=w?$)/, (side) => (side === 'L' ? 'R' : 'L'));
}

/** The roles declared channels play, or null when the sheet has no name for so many pairs. */
export function rolesByHand(
  labels: readonly ChannelLabel[],
  { heightNaming }: ProcessorSheet,
): Map<ChannelLabel, ChannelLabel> | null {
  const order = ['TpF', 'TpSi', 'TpB'];
  const declared = order.filter((base) => labels.some((label) => label.slice(0, -1) === base));
  const names: Record<string, readonly string[] | undefined> = { ...heightNaming };
  const called = names[declared.length] ?? [];
  if (called.length < declared.length) return null;
  const bases: Record<string, string> = { front: 'TpF', middle: 'TpSi', back: 'TpB' };
  return new Map(
    labels.map((label) => {
      const at = declared.indexOf(label.slice(0, -1));
      const base = at < 0 ? label : `${bases[called[at] ?? ''] ?? ''}${label.slice(-1)}`;
      return [label, base as ChannelLabel];
    }),
  );
}

/** Every rule of the sheet that a wiring breaks, checked one after another. */
export function brokenRules(places: Places, sheet: ProcessorSheet): string[] {
  const broken: string[] = [];
  const roles = [...places.keys()];
  const used = [...places.values()];
  const on = (id: string) => roles.filter((role) => places.get(role) === id);
  for (const [role, id] of places) {
    const found = sheet.outputs.find((output) => output.id === id);
    const entry = found?.roles.find(({ channel }) => channel === role);
    if (!entry) broken.push(`${id} cannot carry ${role}`);
    if (entry?.onlyWithout?.some((label) => roles.includes(label))) {
      broken.push(`${id} carries ${role} only without`);
    }
  }
  for (const { id } of sheet.outputs) if (on(id).length > 1) broken.push(`${id} carries several`);
  for (const [first, second] of sheet.pairs) {
    const [left] = on(first);
    const [right] = on(second);
    if ((left ?? right) && (left === undefined || otherSide(left) !== right)) {
      broken.push(`${first} and ${second} carry no pair`);
    }
  }
  for (const { name, choices } of sheet.exclusive) {
    const inUse = choices.filter(({ channels, outputs }) =>
      channels.some((c) => places.has(c) && (!outputs || outputs.includes(places.get(c) ?? ''))),
    );
    if (inUse.length > 1) broken.push(`two choices of ${name}`);
  }
  const chains: [readonly (readonly (readonly string[])[])[], readonly string[]][] = [
    [sheet.filling.channels, roles],
    [sheet.filling.outputs, used],
  ];
  for (const [list, present] of chains) {
    for (const chain of list) {
      const last = chain.findLastIndex((stage) => stage.some((item) => present.includes(item)));
      const before = chain.filter((_, index) => index < last).flat();
      if (before.some((item) => !present.includes(item))) broken.push('a gap in a chain');
    }
  }
  return broken;
}

/** Whether any wiring at all keeps every rule: tries every output for every channel. */
export function anyWiring(labels: readonly ChannelLabel[], sheet: ProcessorSheet): boolean {
  const byHand = rolesByHand(labels, sheet);
  if (!byHand) return false;
  const roles = [...byHand.values()];
  const attempt = (index: number, places: Map<ChannelLabel, string>): boolean => {
    const role = roles[index];
    if (role === undefined) return brokenRules(places, sheet).length === 0;
    return sheet.outputs.some(({ id, roles: able }) => {
      const taken = [...places.values()].includes(id);
      if (taken || !able.some(({ channel }) => channel === role)) return false;
      return attempt(index + 1, new Map([...places, [role, id]]));
    });
  };
  return attempt(0, new Map());
}
