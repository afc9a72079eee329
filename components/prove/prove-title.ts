import { msg, str } from '@lit/localize';
import { withinSentence } from '../../src/locale/within-sentence';
import { isOldProof } from '../../src/session/derive-proof';
import type { BenchState } from '../../src/session/bench';
import { probeTitle, type TitleAndLede } from '../probe/probe-title';
import { missingTitle } from '../propose/propose-title';
import type { ProveSheetId } from './prove-sheets';
import { slipSentences } from './slip-words';
import { visitsTitle } from './visits/visits-title';

/** What a sheet of Prove has to say, as a sentence. */
export function proveTitle(state: BenchState, sheet: ProveSheetId): TitleAndLede {
  if (sheet === 'handover') {
    return {
      title: msg('What is left behind: one page of all that was set and proved'),
      lede: handoverLede(state),
    };
  }
  if (sheet === 'visits') return visitsTitle(state);
  const { kind } = state.activity;
  const { proof, proving, proposal, layout, readings } = state;
  if (kind === 'playing' || kind === 'waiting') return probeTitle(state);
  if (proving && !proof) return beingJudged;
  if (kind === 'reading') return probeTitle(state);
  if (!proof && !proposal && readings) return missingTitle(state);
  if (!proof) {
    return {
      title: proposal
        ? msg('Nothing is proved yet: the settings have only been proposed')
        : msg('Nothing is proved yet: there are no settings to prove'),
      lede: proposal ? msg('Type them into the processor, then play through it.') : '',
    };
  }
  if (isOldProof(state)) {
    return {
      title: msg('What was proved is no longer what is proposed'),
      lede: msg(
        str`The settings have changed since: type the new ones and prove again. Then: ${withinSentence(countsTitle(state))}.`,
      ),
    };
  }
  const slips = slipSentences(proof.lines, layout);
  return { title: countsTitle(state), lede: [...slips, ...proof.notes].join(' ') };
}

const beingJudged: TitleAndLede = {
  get title() {
    return msg('What was played through the processor is being judged');
  },
  get lede() {
    return msg('A moment, please.');
  },
};

/** How many lines hold and how many do not; empty without a proof. */
export function countsTitle({ proof }: Pick<BenchState, 'proof'>): string {
  if (!proof) return '';
  const { pass, fail, 'cannot tell': untold } = proof.counts;
  const all = proof.lines.length;
  if (fail === 0 && untold === 0) return msg(str`All ${all} lines hold`);
  const open = msg(str`${untold} cannot be told`);
  if (fail === 0) return msg(str`No line fails: ${pass} of ${all} hold, ${open}`);
  const failed = msg(str`${fail} of ${all} lines ${fail === 1 ? msg('fails') : msg('fail')}`);
  return untold === 0
    ? msg(str`${failed}, ${pass} hold`)
    : msg(str`${failed}, ${pass} hold, ${open}`);
}

function handoverLede(state: BenchState): string {
  if (!state.proposal) return msg('There are no settings to hand over yet.');
  if (state.proving && !state.proof) return msg(str`${beingJudged.title}: a moment, please.`);
  if (!state.proof) return msg('Nothing is proved yet, and the page says so.');
  return isOldProof(state)
    ? msg('The settings have changed since they were proved, and the page says so.')
    : `${countsTitle(state)}.`;
}
