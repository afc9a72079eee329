import { msg, str } from '@lit/localize';
import type { LedgerMend, LedgerProposal } from '../../../src/proposal/ledger-proposal';
import { sayList } from '../../../src/proposal/phrases';
import type { Layout } from '../../../src/system/channel';
import { dbText, hzText } from '../../../src/locale/number-text';
import { groupName } from '../group-words';
import type { LedgerStretch } from './ledger-bar';

/** A loss over this is explained, dB. */
const toldLossDb = 0.5;
/** A smaller loss is shown as none, dB. */
const shownLossDb = 0.05;

interface Losing {
  readonly lossDb: number;
  readonly gaps: readonly { readonly opens: unknown }[];
  readonly mends?: readonly unknown[];
}

/** Whether a channel loses bass that another setting would bring back. */
export function wantsMending({ lossDb, gaps, mends = [] }: Losing): boolean {
  return lossDb > toldLossDb && couldBeMended({ gaps, mends });
}

function couldBeMended({ gaps, mends = [] }: Pick<Losing, 'gaps' | 'mends'>): boolean {
  return mends.length > 0 || gaps.some(({ opens }) => opens !== null);
}

/** What the ledger found, as a title. */
export function ledgerFinding({ lines, unknown }: LedgerProposal): string {
  if (lines.length === 0) return msg('Where the bass goes cannot be told');
  const losing = lines.filter(wantsMending);
  if (losing.length > 0) {
    const names = losing.map(({ channel }) => channel);
    const said = names.length > 4 ? msg(str`${names.length} channels`) : sayList(names);
    return msg(str`${said} ${losing.length === 1 ? msg('loses') : msg('lose')} bass on the way`);
  }
  const rest =
    unknown.length === 0 ? '' : msg(str`, as far as is known without ${sayList(unknown)}`);
  if (lines.every(({ lossDb }) => lossDb < shownLossDb)) {
    return msg(str`No bass is lost on the way${rest}`);
  }
  return lines.some((line) => line.lossDb >= shownLossDb && couldBeMended(line))
    ? msg(
        str`No channel loses more than ${dbText(toldLossDb)} that a setting would bring back${rest}`,
      )
    : msg(str`No setting would bring back the bass that is missing${rest}`);
}

/** What is missing all the same, though no setting opens a gap. Empty when nothing is. */
export function remainderText({ lines }: LedgerProposal): string {
  const rest = lines.filter((line) => !couldBeMended(line));
  const most = Math.max(0, ...rest.map(({ lossDb }) => lossDb));
  return most < shownLossDb
    ? ''
    : msg(
        str`Up to ${dbText(most)} of a channel’s bass is missing all the same: the lower end of what stands in the room. No setting brings that back.`,
      );
}

/** Who takes the bass of the others. */
export function carrierWords(carrier: 'subs' | 'fronts'): string {
  return carrier === 'subs' ? msg('the subs') : msg('the fronts');
}

/** A channel's stretches as a sentence, for who cannot see the bar. */
export function stretchText(
  stretches: readonly LedgerStretch[],
  carrier: 'subs' | 'fronts',
): string {
  const who = {
    own: msg('its own speaker'),
    carried: carrierWords(carrier),
    nobody: msg('nobody'),
  };
  return stretches
    .flatMap((one) =>
      one.who === 'none'
        ? []
        : [
            msg(
              str`${Math.round(one.lowHz)} to ${hzText(Math.round(one.highHz))}: ${who[one.who]}`,
            ),
          ],
    )
    .join(', ');
}

/** What the button of a mend does. */
export function mendText({ change, gainDb }: LedgerMend, layout: Layout): string {
  const gain = `+${dbText(gainDb)}`;
  switch (change.setting) {
    case 'crossover': {
      const name = groupName(change.group, layout);
      return change.hz === null
        ? msg(str`${name} full range, ${gain}`)
        : msg(str`${name} to ${hzText(change.hz)}, ${gain}`);
    }
    case 'sub low-pass':
      return msg(str`Sub low-pass to ${hzText(change.hz)}, ${gain}`);
    case 'low cut':
      return change.hz === null
        ? msg(str`Low cut off, ${gain}`)
        : msg(str`Low cut to ${hzText(change.hz)}, ${gain}`);
  }
}

/** The ledger in a line, for beside the chart while a handle is held. */
export function ledgerText(lines: readonly (Losing & { readonly name: string })[]): string {
  const losing = lines.filter(wantsMending);
  if (lines.length === 0) return msg('bass ledger: cannot be told');
  if (losing.length === 0) return msg('bass ledger: no gap');
  const names = losing.map(({ name }) => name);
  const most = Math.max(...losing.map(({ lossDb }) => lossDb));
  const who = names.length > 4 ? msg(str`${names.length} channels`) : sayList(names);
  return msg(
    str`bass ledger: ${who} ${losing.length === 1 ? msg('loses') : msg('lose up to')} ${dbText(most)}`,
  );
}
