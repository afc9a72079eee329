import { msg } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { Claim, ProofLine } from './proof';

type Rest = Pick<ProofLine, 'verdict' | 'sentence'> & Partial<Pick<ProofLine, 'figure' | 'action'>>;

/** A line of one claim about one channel, or about all where `about` is a word. */
export function makeLine(
  claim: Claim,
  about: string,
  channels: readonly ChannelLabel[],
  rest: Rest,
): ProofLine {
  return {
    id: `${claim} ${about}`,
    claim,
    channels,
    figure: null,
    changes: [],
    slip: null,
    ...rest,
    action: rest.verdict === 'cannot tell' ? (rest.action ?? playAgain()) : null,
  };
}

export const playAgain = () => msg('Prove it again, louder.');
