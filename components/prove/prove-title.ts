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
      title: 'What is left behind: one page of all that was set and proved',
      lede: handoverLede(state),
    };
  }
  if (sheet === 'visits') return visitsTitle(state);
  const { kind } = state.activity;
  if (kind === 'playing' || kind === 'waiting' || kind === 'reading') return probeTitle(state);
  const { proof, proposal, layout, readings } = state;
  if (!proof && !proposal && readings) return missingTitle(state);
  if (!proof) {
    return {
      title: proposal
        ? 'Nothing is proved yet: the settings have only been proposed'
        : 'Nothing is proved yet: there are no settings to prove',
      lede: proposal ? 'Type them into the processor, then play through it.' : '',
    };
  }
  if (isOldProof(state)) {
    return {
      title: 'What was proved is no longer what is proposed',
      lede: `The settings have changed since: type the new ones and prove again. Then: ${lowerFirst(countsTitle(state))}.`,
    };
  }
  const slips = slipSentences(proof.lines, layout);
  return { title: countsTitle(state), lede: [...slips, ...proof.notes].join(' ') };
}

/** How many lines hold and how many do not; empty without a proof. */
export function countsTitle({ proof }: Pick<BenchState, 'proof'>): string {
  if (!proof) return '';
  const { pass, fail, 'cannot tell': untold } = proof.counts;
  const all = proof.lines.length;
  if (fail === 0 && untold === 0) return `All ${all} lines hold`;
  const open = `${untold} cannot be told`;
  if (fail === 0) return `No line fails: ${pass} of ${all} hold, ${open}`;
  const failed = `${fail} of ${all} lines ${fail === 1 ? 'fails' : 'fail'}`;
  return untold === 0 ? `${failed}, ${pass} hold` : `${failed}, ${pass} hold, ${open}`;
}

function handoverLede(state: BenchState): string {
  if (!state.proposal) return 'There are no settings to hand over yet.';
  if (!state.proof) return 'Nothing is proved yet, and the page says so.';
  return isOldProof(state)
    ? 'The settings have changed since they were proved, and the page says so.'
    : `${countsTitle(state)}.`;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
