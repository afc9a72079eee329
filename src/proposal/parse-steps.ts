import { msg, str } from '@lit/localize';
import { crossoverRangeHz } from '../system/crossover-range';
import { trouble, type Trouble } from '../trouble';

const [lowest, highest] = crossoverRangeHz;

/**
 * Crossover steps in Hz out of text such as "40, 60, 80": commas, semicolons or blanks between,
 * "Hz" allowed. A trouble of kind 'bad-steps' when the list is empty, holds what is no number or
 * not above 0 or not within `crossoverRangeHz`, or does not rise.
 */
export function parseSteps(text: string): number[] | Trouble {
  const words = text
    .replace(/hz\b/gi, ' ')
    .split(/[\s,;]+/)
    .filter((word) => word !== '');
  const steps: number[] = [];
  for (const word of words) {
    const step = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(word) ? Number(word) : NaN;
    if (!Number.isFinite(step)) return refuse(msg(str`“${word.slice(0, 20)}” is not a number.`));
    steps.push(step);
  }
  return checkSteps(steps) ?? steps;
}

/** What is wrong with a list of crossover steps in Hz, or null when nothing is. */
export function checkSteps(steps: readonly number[]): Trouble | null {
  if (steps.length === 0) return refuse(msg('there is none.'));
  let last = 0;
  for (const step of steps) {
    if (!Number.isFinite(step)) return refuse(msg(str`${step} is not a number.`));
    if (step <= 0) return refuse(msg(str`${step} is not above 0.`));
    if (step < lowest || step > highest) {
      return refuse(msg(str`${step} does not lie between ${lowest} and ${highest} Hz.`));
    }
    if (step === last) return refuse(msg(str`${step} stands there twice.`));
    if (step < last) return refuse(msg(str`${step} comes after ${last}, out of order.`));
    last = step;
  }
  return null;
}

function refuse(why: string): Trouble {
  return trouble(
    'bad-steps',
    msg(
      str`The crossover steps cannot be used: ${why} Write them in Hz from low to high, such as 40, 60, 80, 100, 120.`,
    ),
  );
}
