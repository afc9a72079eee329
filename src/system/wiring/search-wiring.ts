import { interchangeableOutputs } from './interchangeable-outputs';
import { awaitedOutputs, propagate } from './propagate';
import { Trial } from './trial';
import type { WiringProblem, WiringRule } from './wiring-problem';

/**
 * An output for every channel (-1: not wired, only where no rule wants it) so that all `rules`
 * hold, or null when there is none. Complete and deterministic: constraint propagation and
 * backtracking, the channel with the fewest outputs first, preferred roles first.
 */
export function searchWiring(
  problem: WiringProblem,
  rules: readonly WiringRule[] = problem.rules,
): number[] | null {
  const { roles, outputCount, ranks } = problem;
  const trial = Trial.start(roles.length, outputCount, (c, o) => (ranks[c]?.[o] ?? -1) >= 0);
  for (const rule of rules) {
    if ('closed' in rule) for (const [channel, output] of rule.closed) trial.close(channel, output);
    if (rule.kind === 'wired') for (const channel of rule.channels) trial.need(channel);
  }
  const classes = interchangeableOutputs(trial, problem, rules);
  return descend(trial);

  function descend(current: Trial): number[] | null {
    if (!propagate(current, problem, rules)) return null;
    const branches = branchesOf(current, problem, rules);
    if (!branches) return current.channels.map((channel) => current.placeOf(channel));
    const tried = new Set<string>();
    for (const [channel, output] of branches) {
      const key = `${channel}:${classes[output] ?? output}`;
      const isFree = !current.isUsed(output);
      if (isFree && tried.has(key)) continue;
      if (isFree) tried.add(key);
      const next = current.copy();
      next.place(channel, output);
      const found = descend(next);
      if (found) return found;
    }
    return null;
  }
}

/**
 * The ways to go on, one of which must be right: the channel with the fewest outputs left, or the
 * awaited output with fewer channels. Null when all is placed.
 */
function branchesOf(
  trial: Trial,
  { ranks }: WiringProblem,
  rules: readonly WiringRule[],
): (readonly [number, number])[] | null {
  let narrowest: (readonly [number, number])[] | null = null;
  for (const channel of trial.channels) {
    if (!trial.isNeeded(channel) || trial.placeOf(channel) >= 0) continue;
    const outputs = trial.outputsFor(channel);
    if (narrowest && narrowest.length <= outputs.length) continue;
    const rank = (output: number) => ranks[channel]?.[output] ?? 0;
    narrowest = outputs.sort((a, b) => rank(a) - rank(b)).map((output) => [channel, output]);
  }
  for (const output of awaitedOutputs(trial, rules)) {
    const channels = trial.channelsFor(output);
    if (narrowest && narrowest.length <= channels.length) continue;
    narrowest = channels.map((channel) => [channel, output]);
  }
  return narrowest;
}
