import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../channel';
import { firstFinding, firstRepeat } from './find-first';
import { partnerLabel } from '../partner-label';
import type { ProcessorOutput, ProcessorSheet } from './processor-sheet';

/** What cannot be true of a sheet's outputs and pairs, as part of a sentence; null when nothing. */
export function findOutputContradiction(sheet: ProcessorSheet): string | null {
  const { outputs } = sheet;
  const id = firstRepeat(outputs.map((output) => output.id));
  if (id >= 0)
    return msg(str`"outputs[${id}].id" is "${outputs[id]?.id}", which another output has`);
  const name = firstRepeat(outputs.map((output) => output.name));
  if (name >= 0) {
    return msg(str`"outputs[${name}].name" is "${outputs[name]?.name}", which another output has`);
  }
  return firstFinding(outputs, rolesContradict) ?? pairsContradict(sheet);
}

function rolesContradict({ roles }: ProcessorOutput, index: number): string | null {
  const where = `outputs[${index}].roles`;
  const repeat = firstRepeat(roles.map((role) => role.channel));
  if (repeat >= 0) return msg(str`"${where}[${repeat}].channel" stands in the same list before`);
  return firstFinding(roles, ({ channel, onlyWithout = [] }, at) => {
    const own = onlyWithout.find((label) => label === channel || label === partnerLabel(channel));
    return own
      ? msg(str`"${where}[${at}].onlyWithout" names ${own}, so ${channel} never fits`)
      : null;
  });
}

function pairsContradict({ outputs, pairs }: ProcessorSheet): string | null {
  const inPairs: string[] = [];
  return firstFinding(pairs, (pair, index) => {
    const where = `"pairs[${index}]"`;
    for (const id of pair) {
      if (!outputs.some((output) => output.id === id)) {
        return msg(str`${where} names "${id}", and no output has that id`);
      }
      if (inPairs.includes(id)) return msg(str`${where} names "${id}" a second time`);
      inPairs.push(id);
    }
    const [first, second] = pair.map((id) => channelsOf(outputs, id));
    return partnerMissing(where, first ?? [], second ?? []);
  });
}

/** A role whose partner the other output cannot carry could never be used. */
function partnerMissing(
  where: string,
  first: readonly ChannelLabel[],
  second: readonly ChannelLabel[],
): string | null {
  const lonely = (from: readonly ChannelLabel[], to: readonly ChannelLabel[]) =>
    from.find((label) => !to.some((other) => partnerLabel(other) === label));
  const found = lonely(first, second) ?? lonely(second, first);
  return found === undefined
    ? null
    : msg(
        str`${where} joins outputs of which one can carry ${found} and the other no partner of it`,
      );
}

function channelsOf(outputs: readonly ProcessorOutput[], id: string): ChannelLabel[] {
  const output = outputs.find((candidate) => candidate.id === id);
  return output?.roles.map((role) => role.channel) ?? [];
}
