import { msg } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import { adviseRewiring } from '../../src/wirecheck/advise-rewiring';
import { concludeEarCheck } from '../../src/wirecheck/ear-check';
import { wiringFindings } from './findings';
import { isWalked, walkResult } from './walk/walk-words';
import { outputNamer, wiringNow, wiringOrder } from './wiring/wiring-now';

/**
 * Whether the wiring is proven, by ear, by the walk or, in a practice room without a hidden fault,
 * by a take, and what is missing before a take can be trusted.
 */
export function patchStanding(state: BenchState): { done: boolean; missing: string | null } {
  const { layout, readings, document } = state;
  const { walk, system, practice } = document;
  const [found] = wiringFindings(layout, readings);
  if (found !== undefined) return { done: false, missing: found };
  const wiring = wiringNow(state);
  if (wiring && !wiring.wired) {
    return { done: false, missing: wiring.conflicts[0]?.sentence ?? msg('It cannot be wired.') };
  }
  const { findings, proven } = concludeEarCheck(wiringOrder(state), document.earAnswers);
  const walked = walk.length === 0 ? [] : walkResult(walk, layout, system).findings;
  const [finding] = [...findings, ...walked];
  if (finding)
    return { done: false, missing: adviseRewiring(finding, outputNamer(state)).sentence };
  const rightByBuild = document.rig === 'practice' && practice.hidden === null;
  if (proven || isWalked(state) || (rightByBuild && readings?.layout === layout.name)) {
    return { done: true, missing: null };
  }
  return {
    done: false,
    missing: rightByBuild
      ? msg(
          'In the practice room every output drives the speaker it claims; a take tells the rest.',
        )
      : msg(
          'Listen that each output drives the speaker it claims before you trust a take: the ear check plays one after another.',
        ),
  };
}
