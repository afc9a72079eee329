import type { Proposal } from '../proposal/proposal';
import { proposeSettings } from '../proposal/propose-settings';
import { isTrouble } from '../trouble';
import type { ProposalTerms } from './proposal-terms';

/** The whole proposal of what the page sends; null where there is none. */
function answerTo({ readings, layout, processor, options }: ProposalTerms): Proposal | null {
  const proposal = proposeSettings(readings, layout, processor, options);
  return isTrouble(proposal) ? null : proposal;
}

self.onmessage = ({ data }: MessageEvent<ProposalTerms>): void => self.postMessage(answerTo(data));
