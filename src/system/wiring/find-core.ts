import { searchWiring } from './search-wiring';
import type { WiringProblem, WiringRule } from './wiring-problem';

/** Rules that make the better reason are tried last, and so stay when either would do. */
const firstToGo: readonly WiringRule['kind'][] = [
  'wired',
  'pair',
  'output order',
  'one role',
  'exclusive',
  'only without',
  'channel order',
];

/**
 * Minimal sets of rules that cannot hold together, each with channels of its own; empty when all
 * can. Every rule is left out in turn and stays out when the rest still cannot hold.
 */
export function findCores(problem: WiringProblem): WiringRule[][] {
  const cores: WiringRule[][] = [];
  let rules = [...problem.rules].sort(
    (a, b) => firstToGo.indexOf(a.kind) - firstToGo.indexOf(b.kind),
  );
  while (searchWiring(problem, rules) === null) {
    let core = rules;
    for (const rule of rules) {
      const without = core.filter((other) => other !== rule);
      if (searchWiring(problem, without) === null) core = without;
    }
    cores.push(core);
    rules = rules.filter((rule) => !(rule.kind === 'wired' && core.includes(rule)));
  }
  return cores.sort((a, b) => firstChannel(a) - firstChannel(b));
}

function firstChannel(core: readonly WiringRule[]): number {
  return Math.min(...core.flatMap((rule) => (rule.kind === 'wired' ? rule.channels : [])));
}
