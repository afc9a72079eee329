import { canMatchAll } from './match-all';
import type { Trial } from './trial';
import type { ChoicePlaces, WiringProblem, WiringRule } from './wiring-problem';

/** Closes all that the rules rule out, in place; false when nothing can be true any more. */
export function propagate(
  trial: Trial,
  problem: WiringProblem,
  rules: readonly WiringRule[],
): boolean {
  let before: number;
  do {
    before = trial.changes;
    for (const rule of rules) applyRule(trial, problem, rule);
    if (trial.isStuck()) return false;
  } while (trial.changes > before);
  return hasRoomForAll(trial, rules);
}

/** Outputs that must be in use because one after them in an order is, and are not yet. */
export function awaitedOutputs(trial: Trial, rules: readonly WiringRule[]): number[] {
  const awaited = new Set<number>();
  for (const rule of rules) {
    if (rule.kind !== 'output order') continue;
    const last = rule.stages.findLastIndex((stage) => stage.some((o) => trial.isUsed(o)));
    for (const output of rule.stages.slice(0, Math.max(last, 0)).flat()) {
      if (!trial.isUsed(output)) awaited.add(output);
    }
  }
  return [...awaited];
}

function applyRule(trial: Trial, problem: WiringProblem, rule: WiringRule): void {
  switch (rule.kind) {
    case 'one role':
      for (const output of rule.outputs) keepToOne(trial, output);
      return;
    case 'pair':
      keepPair(trial, problem, rule.outputs[0], rule.outputs[1]);
      keepPair(trial, problem, rule.outputs[1], rule.outputs[0]);
      return;
    case 'exclusive':
      keepExclusive(trial, rule.choices);
      return;
    case 'output order':
      keepOrder(trial, rule.stages);
      return;
    case 'wired':
    case 'only without':
    case 'channel order':
      return; // Held from the start.
  }
}

function keepToOne(trial: Trial, output: number): void {
  const placed = trial.channels.find((channel) => trial.placeOf(channel) === output);
  if (placed === undefined) return;
  for (const other of trial.channelsFor(output)) if (other !== placed) trial.close(other, output);
}

/** What goes on `here` needs its partner on `there`. */
function keepPair(trial: Trial, { partners }: WiringProblem, here: number, there: number): void {
  for (const channel of trial.channelsFor(here)) {
    const partner = partners[channel] ?? -1;
    if (partner < 0 || !trial.isOpen(partner, there)) trial.close(channel, here);
    else if (trial.placeOf(channel) === here) trial.place(partner, there);
  }
}

/** A choice is in use as soon as a channel that must go somewhere can go nowhere else. */
function keepExclusive(trial: Trial, choices: readonly ChoicePlaces[]): void {
  for (const choice of choices) {
    const inUse = choice.channels.some(
      (c) => trial.isNeeded(c) && trial.outputsFor(c).every((o) => choice.outputs.includes(o)),
    );
    if (!inUse) continue;
    for (const other of choices) {
      if (other === choice) continue;
      for (const c of other.channels) for (const o of other.outputs) trial.close(c, o);
    }
  }
}

function keepOrder(trial: Trial, stages: readonly (readonly number[])[]): void {
  const last = stages.findLastIndex((stage) => stage.some((output) => trial.isUsed(output)));
  let reachable = true;
  for (const [index, stage] of stages.entries()) {
    for (const output of stage) {
      const candidates = trial.channelsFor(output);
      if (!reachable) for (const channel of candidates) trial.close(channel, output);
      const [only] = candidates;
      const isForced = index < last && candidates.length === 1 && only !== undefined;
      if (isForced && !trial.isUsed(output)) trial.place(only, output);
    }
    reachable &&= stage.every((output) => trial.channelsFor(output).length > 0);
  }
}

/** A count of places that no single rule sees: as many outputs as channels, and the reverse. */
function hasRoomForAll(trial: Trial, rules: readonly WiringRule[]): boolean {
  const limited = new Set(rules.flatMap((rule) => (rule.kind === 'one role' ? rule.outputs : [])));
  const needed = trial.channels.filter((channel) => trial.isNeeded(channel));
  return (
    canMatchAll(
      needed,
      (channel) => trial.outputsFor(channel),
      (output) => limited.has(output),
    ) &&
    canMatchAll(awaitedOutputs(trial, rules), (output) =>
      trial.channelsFor(output).filter((channel) => trial.placeOf(channel) < 0),
    )
  );
}
