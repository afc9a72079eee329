import type { BenchState } from '../../../src/session/bench';
import type { TitleAndLede } from '../../probe/probe-title';
import { comparedVisits } from './compared';

/** What two visits have to say, as a sentence. */
export function visitsTitle(state: BenchState): TitleAndLede {
  const compared = comparedVisits(state);
  if (!compared) {
    return {
      title: 'No earlier visit is chosen to compare with',
      lede: 'Choose a session of the same system, and see what moved, what drifted and what was changed since.',
    };
  }
  const { counts, notes, before } = compared.comparison;
  const { changed, 'cannot tell': untold, 'as it was': same } = counts;
  const since = `since “${before.session}”`;
  const title =
    changed === 0
      ? `Nothing is seen to have changed ${since}`
      : `${changed} ${changed === 1 ? 'thing has' : 'things have'} changed ${since}`;
  const lede = `${same} ${same === 1 ? 'is' : 'are'} as then, ${untold} cannot be told.`;
  return { title, lede: [lede, ...notes].join(' ') };
}
