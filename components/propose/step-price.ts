import type { GroupProposal } from '../../src/proposal/proposal';
import type { ChannelReading } from '../../src/reading/reading';
import { curveAt } from '../charts/curve-path';
import { dbText, hzText, isNumber, numberText } from '../charts/number-text';

/** Above this a sub begins to be heard where it stands (common practice, no source). */
const localisedHz = 120;

/**
 * What it costs to set another step than the proposed one, as sentences: how far the deciding
 * speaker is down there by its own fit, or what the subs carry instead. Empty for the proposed step.
 */
export function stepPrice(
  stepHz: number,
  { crossoverHz, decidedBy }: GroupProposal,
  decider: ChannelReading | null,
): string {
  if (stepHz === crossoverHz) return '';
  const here = downAt(stepHz, decider);
  const name = decidedBy ?? 'this group';
  const start = here
    ? `At ${hzText(stepHz)} ${name} is ${here.text} down by itself${here.between}`
    : null;
  if (crossoverHz === null) {
    return `${start ? `${start}. ` : ''}No step was proposed: ${hzText(stepHz)} is your own judgement.`;
  }
  if (stepHz < crossoverHz) {
    const there = downAt(crossoverHz, decider);
    return start && there
      ? `${start}, at the proposed ${hzText(crossoverHz)} ${there.text}: the difference is missing around the crossover.`
      : `${hzText(stepHz)} lies ${hzText(crossoverHz - stepHz)} below the proposed step: bass may be missing around the crossover.`;
  }
  const localised =
    stepHz > localisedHz
      ? ` Above ${hzText(localisedHz)} a sub begins to be heard where it stands.`
      : '';
  return `The subs carry ${hzText(stepHz - crossoverHz)} more than ${name} needs.${localised}`;
}

function downAt(
  hz: number,
  decider: ChannelReading | null,
): { readonly text: string; readonly between: string } | null {
  const fit = decider?.curves?.fit;
  if (!fit) return null;
  const down = curveAt(fit.hz, fit.db, hz);
  if (!isNumber(down)) return null;
  const [least, most] = [curveAt(fit.hz, fit.high, hz), curveAt(fit.hz, fit.low, hz)];
  const between =
    isNumber(least) && isNumber(most)
      ? ` (90\u202f% between ${numberText(Math.max(0, -least), 1)} and ${dbText(-most)})`
      : '';
  return { text: dbText(Math.max(0, -down)), between };
}
