import { msg, str } from '@lit/localize';
import { stateWord } from '../../../src/locale/state-words';
import type { BassSettings } from '../../../src/proposal/bass-settings';
import { recompute } from '../../../src/proposal/workbench';
import { dbText, hzText, signedText, thinSpace } from '../../../src/locale/number-text';
import { groupName } from '../group-words';
import type { ProposeView } from '../propose-view';
import { distanceText } from '../subs/sub-delay';

/** One line of the comparison. */
export interface CompareRow {
  readonly name: string;
  readonly proposed: string;
  readonly own: string;
  readonly differs: boolean;
  /** True for what follows from the settings, such as a loss. */
  readonly outcome: boolean;
}

/** The proposed settings and those in force side by side, and what each set of them loses. */
export function compareRows(view: ProposeView): CompareRow[] {
  const { proposal, layout, workbench, settings, proposed } = view;
  const { groups, subs } = proposal;
  const unit = workbench.abilities.distanceUnit;
  const row = (name: string, say: (some: BassSettings) => string, outcome = false): CompareRow => {
    const [one, other] = [say(proposed), say(settings)];
    return { name, proposed: one, own: other, differs: one !== other, outcome };
  };
  const results = new Map([proposed, settings].map((some) => [some, recompute(workbench, some)]));
  const lossOf = (some: BassSettings, group: string): string => {
    const sum = results.get(some)?.sums.find((one) => one.group === group)?.sum;
    return sum ? msg(str`${dbText(sum.lossDb)}, dip ${dbText(sum.dipDb)}`) : '–';
  };
  const ledgerOf = (some: BassSettings, name: string): string =>
    dbText(results.get(some)?.ledger.find((line) => line.name === name)?.lossDb);
  const names = results.get(settings)?.ledger.map(({ name }) => name) ?? [];
  return [
    ...groups.map(({ group }) =>
      row(groupName(group, layout), ({ crossoverHz }) =>
        offText(crossoverHz[group], msg('full range')),
      ),
    ),
    ...(subs
      ? [
          row(msg('Sub low-pass'), ({ subLowPassHz }) => offText(subLowPassHz, stateWord('off'))),
          row(msg('Low cut'), ({ lowCutHz }) => offText(lowCutHz, stateWord('off'))),
          ...subs.subs.flatMap(({ channel }) => [
            row(msg(str`Distance of ${channel}`), ({ distanceMetres }) => {
              const metres = distanceMetres[channel];
              return metres === undefined ? msg('cannot tell') : distanceText(metres, unit);
            }),
            row(msg(str`Level of ${channel}`), ({ trimDb }) => {
              const db = trimDb[channel];
              return db === undefined ? msg('cannot tell') : `${signedText(db, 1)}${thinSpace}dB`;
            }),
          ]),
        ]
      : []),
    ...(workbench.field
      ? groups.map(({ group }) =>
          row(
            msg(str`${groupName(group, layout)} with the subs lose`),
            (some) => lossOf(some, group),
            true,
          ),
        )
      : []),
    ...names.map((name) =>
      row(msg(str`${name} loses of its bass`), (some) => ledgerOf(some, name), true),
    ),
  ];
}

function offText(hz: number | null | undefined, without: string): string {
  return hz === null || hz === undefined ? without : hzText(hz);
}

/** The comparison as tab-separated text with plain signs. */
export function compareCopy(rows: readonly CompareRow[]): string {
  const cell = (text: string) => text.replaceAll('\u2212', '-').replaceAll('\u202f', ' ');
  const lines = rows.map(({ name, proposed, own }) => [name, proposed, own].map(cell).join('\t'));
  return `setting\tproposed\tin force\n${lines.join('\n')}\n`;
}
