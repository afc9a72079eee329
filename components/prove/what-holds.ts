import { msg, str } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import { distanceUnitOf } from '../../src/session/distance-unit';
import { stepsOf } from '../../src/system/sheet/steps-of-sheet';
import { dbText, millisecondsText, thinSpace } from '../../src/locale/number-text';
import { distanceText } from '../propose/subs/sub-delay';

/** What is claimed of the system once its settings are typed, a sentence each. */
export function whatHolds({ layout, document, proposal }: BenchState): string[] {
  const steps = document.sheet ? stepsOf(document.sheet) : document.processor;
  const ofSubs = layout.channels.some(({ kind }) => kind === 'sub')
    ? [
        msg(
          str`Each speaker and the subs together keep to the expected sum within 3${thinSpace}dB about the crossover.`,
        ),
        msg('The subs play the bass of every channel, and LFE at its level.'),
      ]
    : [];
  return [
    msg(
      'Each speaker answers on its own channel, with the right polarity, and nothing else plays.',
    ),
    msg(
      str`All arrive together, within ${millisecondsText(0.0001, 1)} and one distance step (${distanceText(steps.distanceStepMetres, distanceUnitOf(document))}).`,
    ),
    msg(
      str`All are equally loud, within ${dbText(0.5)} and one level step (${dbText(steps.levelStepDb)}).`,
    ),
    ...ofSubs,
    proposal?.equaliser
      ? msg('No dynamics change the response.')
      : msg('No equaliser and no dynamics change the response.'),
  ];
}
