import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../channel';
import { channelKind } from '../channel-names';
import type { ProcessorSheet } from '../sheet/processor-sheet';
import type { AssignedRoles, ChannelRole } from './assign-roles';
import { capitalised, listed, nameChannels } from './name-things';
import type { RuleName, WiringConflict } from './wiring';
import type { WiringProblem, WiringRule } from './wiring-problem';

const ruleNames: Readonly<Record<WiringRule['kind'], RuleName>> = {
  wired: 'what outputs carry',
  'one role': 'one role per output',
  pair: 'outputs in pairs',
  'only without': 'role only without others',
  exclusive: 'exclusive choices',
  'channel order': 'order of channels',
  'output order': 'order of outputs',
};

const kindNames = {
  get bed() {
    return msg('the bed');
  },
  get height() {
    return msg('heights');
  },
  get sub() {
    return msg('subs');
  },
} as const;

/** A minimal set of rules that cannot hold together, in words. */
export function describeConflict(
  core: readonly WiringRule[],
  problem: WiringProblem,
  roles: readonly ChannelRole[],
  sheet: ProcessorSheet,
): WiringConflict {
  const wanted = core.flatMap((rule) => (rule.kind === 'wired' ? [rule.channels] : []));
  const channels = wanted.flat().flatMap((index) => roles[index] ?? []);
  const names = (outputs: readonly number[]) =>
    listed(sheet.outputs.filter((_, index) => outputs.includes(index)).map(({ name }) => name));
  const reasons = [
    ...wanted.map((group) => describeCarriers(group, problem, roles, sheet)),
    ...core.flatMap((rule) => describeRule(rule, problem, names) ?? []),
  ];
  const others = core.filter((rule) => rule.kind !== 'wired').map((rule) => ruleNames[rule.kind]);
  const rules = others.length > 0 ? others : [ruleNames.wired];
  const who = nameChannels(channels.map(({ channel }) => channel));
  const together = wanted.length > 1 ? ' together' : '';
  return {
    rules: [...new Set(rules)],
    outputs: outputsInConflict(core, problem, sheet),
    channels: channels.map(({ channel }) => channel),
    sentence: msg(str`${capitalised(who)} cannot be wired${together}: ${reasons.join('; ')}.`),
  };
}

/** Heights for which the sheet has no name. */
export function describeUnnamed(
  { unnamed, heightPairs }: AssignedRoles,
  sheet: ProcessorSheet,
): WiringConflict {
  const known = (['1', '2', '3'] as const).filter((count) => sheet.heightNaming[count]);
  const takes = known.length === 0 ? msg('no heights') : msg(str`${known.join(' or ')} only`);
  const pairs = heightPairs === 1 ? msg('1 pair') : msg(str`${heightPairs} pairs`);
  return {
    rules: ['names of height pairs'],
    outputs: outputsOfKind(unnamed, sheet),
    channels: unnamed,
    sentence: msg(
      str`${capitalised(nameChannels(unnamed))} cannot be wired: the processor has no names for ${pairs} of heights; it takes ${takes}.`,
    ),
  };
}

type Names = (outputs: readonly number[]) => string;

function describeCarriers(
  group: readonly number[],
  { ranks }: WiringProblem,
  roles: readonly ChannelRole[],
  sheet: ProcessorSheet,
): string {
  const own = group.flatMap((index) => roles[index] ?? []);
  const who = nameChannels(own.map(({ channel }) => channel));
  const played = nameChannels(own.map(({ role }) => role));
  const what = who === played ? who : msg(str`${who} as ${played.replace(/^the /, '')}`);
  const carriers = sheet.outputs.filter((_, output) =>
    group.some((channel) => (ranks[channel]?.[output] ?? -1) >= 0),
  );
  if (carriers.length > 0) {
    return msg(str`only ${listed(carriers.map(({ name }) => name))} can carry ${what}`);
  }
  const kind = kindNames[channelKind(own[0]?.role ?? 'FL')];
  const others = outputsOfKind(
    own.map(({ role }) => role),
    sheet,
  );
  const names = sheet.outputs.filter(({ id }) => others.includes(id)).map(({ name }) => name);
  const there = names.length === 0 ? msg('none') : listed(names);
  return msg(str`no output can carry ${what} (outputs for ${kind}: ${there})`);
}

function describeRule(rule: WiringRule, { roles }: WiringProblem, names: Names): string | null {
  switch (rule.kind) {
    case 'wired':
      return null;
    case 'one role':
      return rule.outputs.length === 1
        ? msg(str`${names(rule.outputs)} carries one channel at a time`)
        : msg(str`${names(rule.outputs)} carry one channel each at a time`);
    case 'pair':
      return msg(str`${names(rule.outputs)} carry left and right of one pair or nothing`);
    case 'only without': {
      const who = nameChannels(rule.closed.flatMap(([channel]) => roles[channel] ?? []));
      const where = names(rule.closed.map(([, output]) => output));
      return msg(str`${where} can carry ${who} only without ${nameChannels(rule.present)}`);
    }
    case 'exclusive':
      return msg(str`of “${rule.name}” the processor takes one choice only`);
    case 'channel order':
      return msg(
        str`the processor wants ${nameChannels(rule.missing)} filled before, and the layout has none`,
      );
    case 'output order':
      return msg(
        str`the processor fills ${listed(rule.stages.map((stage) => names(stage)))} in this order`,
      );
  }
}

function outputsInConflict(
  core: readonly WiringRule[],
  { roles }: WiringProblem,
  sheet: ProcessorSheet,
): string[] {
  const indices = new Set(core.flatMap((rule) => outputsOfRule(rule)));
  if (indices.size > 0) return sheet.outputs.filter((_, o) => indices.has(o)).map(({ id }) => id);
  const wanted = core.flatMap((rule) => (rule.kind === 'wired' ? rule.channels : []));
  return outputsOfKind(
    wanted.flatMap((channel) => roles[channel] ?? []),
    sheet,
  );
}

function outputsOfRule(rule: WiringRule): readonly number[] {
  switch (rule.kind) {
    case 'one role':
    case 'pair':
      return rule.outputs;
    case 'only without':
      return rule.closed.map(([, output]) => output);
    case 'exclusive':
      return rule.choices.flatMap((choice) => choice.outputs);
    case 'output order':
      return rule.stages.flat();
    case 'wired':
    case 'channel order':
      return [];
  }
}

/** Ids of the outputs that carry bed, heights or subs, whichever the labels are. */
function outputsOfKind(labels: readonly ChannelLabel[], sheet: ProcessorSheet): string[] {
  const kinds = new Set(labels.map((label) => channelKind(label)));
  const carries = ({ channel }: { channel: ChannelLabel }) => kinds.has(channelKind(channel));
  return sheet.outputs.filter((output) => output.roles.some(carries)).map(({ id }) => id);
}
