import '../locale/hear-locale';
import { ParcelOpener } from '../parcel';
import type { Proposal } from '../proposal/proposal';
import { proposeSettings } from '../proposal/propose-settings';
import { isTrouble } from '../trouble';
import { unpackTerms, type PackedTerms } from './packed-terms';

const opener = new ParcelOpener();

/** The whole proposal of what the page sends; null where there is none. */
function answerTo(terms: PackedTerms): Proposal | null {
  const { readings, layout, processor, options } = unpackTerms(terms, opener);
  const proposal = proposeSettings(readings, layout, processor, options);
  return isTrouble(proposal) ? null : proposal;
}

self.onmessage = ({ data }: MessageEvent<PackedTerms>): void => self.postMessage(answerTo(data));
