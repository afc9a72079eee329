import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../channel';
import { firstFinding, firstRepeat } from './find-first';
import type { ExclusiveSet, HeightPair, ProcessorSheet } from './processor-sheet';

/** What cannot be true of a sheet's wiring rules, as part of a sentence; null when nothing. */
export function findRuleContradiction(sheet: ProcessorSheet): string | null {
  const ids = sheet.outputs.map((output) => output.id);
  const { channels, outputs } = sheet.filling;
  const carried = new Set(
    sheet.outputs.flatMap((output) => output.roles.map((role) => role.channel)),
  );
  const needs = transitiveNeeds(channels);
  return (
    chainsContradict('filling.channels', channels, [...carried], msg('no output can carry it')) ??
    chainsContradict('filling.outputs', outputs, ids, msg('no output has that id')) ??
    firstFinding(sheet.exclusive, (set, index) => exclusiveContradicts(set, index, sheet, needs)) ??
    heightNamingContradicts(sheet)
  );
}

type Needs = ReadonlyMap<string, ReadonlySet<string>>;

/** For each item the items that must be in use before it. */
function transitiveNeeds(chains: readonly (readonly (readonly string[])[])[]): Needs {
  const needs = new Map<string, Set<string>>();
  for (const chain of chains) {
    for (const [at, stage] of chain.entries()) {
      for (const item of stage) {
        const own = needs.get(item) ?? new Set();
        needs.set(item, own);
        for (const earlier of chain.slice(0, at).flat()) own.add(earlier);
      }
    }
  }
  for (const own of needs.values()) {
    for (const item of own) for (const further of needs.get(item) ?? []) own.add(further);
  }
  return needs;
}

function chainsContradict(
  field: string,
  chains: readonly (readonly (readonly string[])[])[],
  known: readonly string[],
  unknown: string,
): string | null {
  const needs = transitiveNeeds(chains);
  return firstFinding(chains, (chain, index) => {
    const where = `"${field}[${index}]"`;
    const items = chain.flat();
    const stranger = items.find((item) => !known.includes(item));
    if (stranger !== undefined) return msg(str`${where} names "${stranger}", and ${unknown}`);
    const repeat = firstRepeat(items);
    if (repeat >= 0) return msg(str`${where} names "${items[repeat]}" twice`);
    const circular = items.find((item) => needs.get(item)?.has(item));
    if (circular !== undefined) return msg(str`${where} lets "${circular}" wait for itself`);
    return null;
  });
}

function exclusiveContradicts(
  { choices }: ExclusiveSet,
  index: number,
  { outputs }: ProcessorSheet,
  needs: Needs,
): string | null {
  const where = `exclusive[${index}].choices`;
  if (choices.length < 2) return msg(str`"${where}" has fewer than two choices`);
  const carries = (id: string, label: ChannelLabel) =>
    outputs.some((output) => output.id === id && output.roles.some((r) => r.channel === label));
  return firstFinding(choices, (choice, at) => {
    const ids = choice.outputs ?? outputs.map((output) => output.id);
    const stranger = ids.find((id) => !outputs.some((output) => output.id === id));
    if (stranger !== undefined)
      return msg(str`"${where}[${at}].outputs" names "${stranger}", no output`);
    const lost = choice.channels.find((label) => !ids.some((id) => carries(id, label)));
    if (lost)
      return msg(str`"${where}[${at}].channels" names ${lost}, which its outputs cannot carry`);
    return firstFinding(choices.slice(0, at), (earlier, before) => {
      const shared = choice.channels.find((label) => earlier.channels.includes(label));
      const meet = !earlier.outputs || ids.some((id) => earlier.outputs?.includes(id));
      if (shared && meet)
        return msg(str`"${where}[${at}]" and "${where}[${before}]" share ${shared}`);
      if (choice.outputs ?? earlier.outputs) return null;
      const dependent =
        choice.channels.find((label) => earlier.channels.some((e) => needs.get(label)?.has(e))) ??
        earlier.channels.find((label) => choice.channels.some((c) => needs.get(label)?.has(c)));
      return dependent
        ? msg(str`"${where}[${at}]" excludes what "filling.channels" wants before ${dependent}`)
        : null;
    });
  });
}

const frontToBack: readonly HeightPair[] = ['front', 'middle', 'back'];

function heightNamingContradicts({ heightNaming }: ProcessorSheet): string | null {
  return firstFinding(['1', '2', '3'] as const, (count) => {
    const pairs = heightNaming[count];
    if (!pairs) return null;
    const where = `"heightNaming.${count}"`;
    if (pairs.length !== Number(count)) return msg(str`${where} names ${pairs.length} pairs`);
    const order = pairs.map((pair) => frontToBack.indexOf(pair));
    const rises = order.every((place, at) => place > (order[at - 1] ?? -1));
    return rises ? null : msg(str`${where} does not go from front to back, each pair once`);
  });
}
