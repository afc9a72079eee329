import { msg, str } from '@lit/localize';
import { stateWord } from '../../src/locale/state-words';
import { mostInverted } from '../../src/proposal/most-inverted';
import type { ChannelProposal } from '../../src/proposal/proposal';
import type { Reason } from '../../src/proposal/reason';
import { sayValue } from '../../src/proposal/settings-list';
import type { Channel } from '../../src/system/channel';
import { proposedHz } from '../../src/workbench/try-settings';
import { hzText, isNumber } from '../../src/locale/number-text';
import type { ProposeView } from './propose-view';
import { polarityOf } from './subs/subs-words';

/** What the table of settings is made of. */
export type SettingsView = Pick<ProposeView, 'proposal' | 'layout' | 'settings' | 'readings'>;

/** Polarity of a sub as it is to be typed; of any other speaker how it is wired. */
export interface PolarityCell {
  readonly text: string;
  /** What is to be done about it; null when nothing is. */
  readonly todo: string | null;
}

/** One line of the table of settings: what to type, and why. */
export interface SettingsRow {
  readonly channel: Channel;
  readonly distance: string;
  readonly level: string;
  readonly crossover: string;
  /** True when the tuner set another crossover than the proposed one. */
  readonly chosen: boolean;
  readonly polarity: PolarityCell;
  readonly reasons: readonly { readonly of: string; readonly reasons: readonly Reason[] }[];
  readonly warnings: readonly string[];
}

const unknown = () => msg('cannot tell');

/** The settings of every speaker in the order of the plan. */
export function settingsRows(view: SettingsView): SettingsRow[] {
  const { proposal, layout, settings } = view;
  return layout.channels.flatMap((channel) => {
    const found = proposal.channels.find((one) => one.channel === channel.label);
    if (!found) return [];
    const { distance, level } = found;
    const group = proposal.groups.find((one) => one.group === channel.group) ?? null;
    const hz = settings.crossoverHz[channel.group] ?? null;
    const isSub = channel.kind === 'sub';
    return [
      {
        channel,
        distance: distance ? sayValue(distance) : unknown(),
        level: level ? sayValue(level) : unknown(),
        crossover: isSub ? '–' : hz === null ? msg('full range') : hzText(hz),
        chosen: group !== null && hz !== proposedHz(group),
        polarity: polarityCell(channel, found.polarity, view),
        reasons: [
          { of: msg('Distance'), reasons: found.distanceReasons },
          { of: msg('Level trim'), reasons: found.levelReasons },
          ...(group ? [{ of: msg('Crossover'), reasons: group.reasons }] : []),
        ].filter(({ reasons }) => reasons.length > 0),
        warnings: found.warnings,
      },
    ];
  });
}

function polarityCell(
  { kind, label }: Channel,
  read: ChannelProposal['polarity'],
  { proposal, readings }: SettingsView,
): PolarityCell {
  if (kind === 'sub') {
    const set = polarityOf(proposal, label);
    return { text: stateWord(set), todo: set === 'inverted' ? msg('to type') : null };
  }
  if (read === 'cannot tell') return { text: unknown(), todo: null };
  if (read === 'normal') return { text: msg('wired right'), todo: null };
  return mostInverted(readings.channels)
    ? { text: msg('reads inverted'), todo: null }
    : { text: msg('wired inverted'), todo: msg('swap its wires') };
}

/** The settings as tab-separated text with plain signs, for a spreadsheet. */
export function settingsCopy(view: SettingsView): string {
  const { proposal, layout, settings } = view;
  const cell = (value: number | null | undefined, digits: number) =>
    isNumber(value) ? String(Number(value.toFixed(digits))) : '';
  const lines = layout.channels.map((channel) => {
    const { label, group, kind } = channel;
    const found = proposal.channels.find((one) => one.channel === label);
    return [
      label,
      cell(found?.distanceMetres, 3),
      cell(found?.levelTrimDb, 2),
      kind === 'sub' ? '' : cell(settings.crossoverHz[group], 0),
      found ? polarityCell(channel, found.polarity, view).text : '',
    ].join('\t');
  });
  return msg(
    str`speaker\tdistance m\tlevel trim dB\tcrossover Hz\tpolarity\n${lines.join('\n')}\n`,
  );
}
