import { msg } from '@lit/localize';
import type { Claim } from '../../src/proof/proof';

/** What a line of a proof is about, as the heading of a sentence, in the language in force. */
export function claimWord(claim: Claim): string {
  const words: Readonly<Record<Claim, string>> = {
    answers: msg('Answers on its own channel'),
    polarity: msg('Polarity'),
    arrival: msg('Arrival'),
    level: msg('Level'),
    crossover: msg('Sum about the crossover'),
    'redirected bass': msg('Redirected bass'),
    LFE: msg('LFE'),
    response: msg('Response'),
    'nothing else': msg('Nothing else plays'),
  };
  return words[claim];
}
