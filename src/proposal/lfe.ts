import { msg, str } from '@lit/localize';
import { lfeHz } from './ledger';
import type { LfeProposal } from './proposal';

/** In-band gain of LFE over a main channel, dB (ITU-R BS.775, from memory). */
const replayGainDb = 10;

/** What the LFE channel needs: its low-pass and its replay gain (ITU-R BS.775, from memory). */
export function lfeProposal(hasSubs: boolean): LfeProposal {
  const who = hasSubs ? msg('The subs') : msg('Without subs the fronts');
  return {
    lowPassHz: lfeHz,
    replayGainDb,
    reasons: [
      {
        sentence: msg(
          str`${who} play LFE: its content ends near ${lfeHz} Hz and is replayed ${replayGainDb} dB louder in its band than a main channel (ITU-R BS.775). Leave the LFE level at 0 dB.`,
        ),
        grounds: [],
      },
    ],
  };
}
