import { msg, str } from '@lit/localize';
import type { Trial } from './trial';
import type { WiringProblem, WiringRule } from './wiring-problem';

/**
 * A class for every output: two free outputs of one class can change places, with the outputs they
 * are paired with, in any wiring. A search need not try both.
 */
export function interchangeableOutputs(
  trial: Trial,
  { outputCount }: WiringProblem,
  rules: readonly WiringRule[],
): string[] {
  const own = Array.from({ length: outputCount }, (_, output) => {
    const inRules = rules.map((rule) => roleInRule(rule, output));
    return `${trial.channelsFor(output).join()}/${inRules.join()}`;
  });
  const classes = [...own];
  for (const rule of rules) {
    if (rule.kind !== 'pair') continue;
    const [first, second] = rule.outputs;
    classes[first] = `1/${own[first]}/${own[second]}`;
    classes[second] = `2/${own[first]}/${own[second]}`;
  }
  return classes;
}

function roleInRule(rule: WiringRule, output: number): string {
  switch (rule.kind) {
    case 'one role':
      return rule.outputs.includes(output) ? 'one' : '';
    case 'exclusive':
      return rule.choices.map(({ outputs }) => Number(outputs.includes(output))).join('');
    case 'output order':
      return rule.stages.some((stage) => stage.includes(output)) ? msg(str`order ${output}`) : '';
    default:
      return '';
  }
}
