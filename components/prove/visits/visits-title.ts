import { msg, str } from '@lit/localize';
import type { BenchState } from '../../../src/session/bench';
import type { TitleAndLede } from '../../probe/probe-title';
import { comparedVisits } from './compared';

/** What two visits have to say, as a sentence. */
export function visitsTitle(state: BenchState): TitleAndLede {
  const compared = comparedVisits(state);
  if (!compared) {
    return {
      title: msg('No earlier visit is chosen to compare with'),
      lede: msg(
        'Choose a session of the same system, and see what moved, what drifted and what was changed since.',
      ),
    };
  }
  const { counts, notes, before } = compared.comparison;
  const { changed, 'cannot tell': untold, 'as it was': same } = counts;
  const since = msg(str`since “${before.session}”`);
  const title =
    changed === 0
      ? msg(str`Nothing is seen to have changed ${since}`)
      : msg(
          str`${changed} ${changed === 1 ? msg('thing has') : msg('things have')} changed ${since}`,
        );
  const lede = msg(
    str`${same} ${same === 1 ? msg('is') : msg('are')} as then, ${untold} cannot be told.`,
  );
  return { title, lede: [lede, ...notes].join(' ') };
}
