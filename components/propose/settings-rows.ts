import { msg, str } from '@lit/localize';
import type { ChannelProposal } from '../../src/proposal/proposal';
import type { Reason } from '../../src/proposal/reason';
import { sayValue } from '../../src/proposal/settings-list';
import type { Channel } from '../../src/system/channel';
import { proposedHz } from '../../src/workbench/try-settings';
import { hzText, isNumber } from '../../src/locale/number-text';
import type { ProposeView } from './propose-view';
import { polarityOf } from './subs/subs-words';

/** One line of the table of settings: what to type, and why. */
export interface SettingsRow {
  readonly channel: Channel;
  readonly distance: string;
  readonly level: string;
  readonly crossover: string;
  /** True when the tuner set another crossover than the proposed one. */
  readonly chosen: boolean;
  readonly polarity: ChannelProposal['polarity'];
  readonly reasons: readonly { readonly of: string; readonly reasons: readonly Reason[] }[];
  readonly warnings: readonly string[];
}

const unknown = () => msg('cannot tell');

/** The settings of every speaker in the order of the plan. */
export function settingsRows({ proposal, layout, settings }: ProposeView): SettingsRow[] {
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
        polarity: isSub ? polarityOf(proposal, channel.label) : found.polarity,
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

/** The settings as tab-separated text with plain signs, for a spreadsheet. */
export function settingsCopy({ proposal, layout, settings }: ProposeView): string {
  const cell = (value: number | null | undefined, digits: number) =>
    isNumber(value) ? String(Number(value.toFixed(digits))) : '';
  const lines = layout.channels.map(({ label, group, kind }) => {
    const found = proposal.channels.find((one) => one.channel === label);
    return [
      label,
      cell(found?.distanceMetres, 3),
      cell(found?.levelTrimDb, 2),
      kind === 'sub' ? '' : cell(settings.crossoverHz[group], 0),
      found?.polarity ?? '',
    ].join('\t');
  });
  return msg(
    str`speaker\tdistance m\tlevel trim dB\tcrossover Hz\tpolarity\n${lines.join('\n')}\n`,
  );
}
