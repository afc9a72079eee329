import { msg, str } from '@lit/localize';
import { isStateName, stateWord } from '../locale/state-words';
import type { ChannelLabel, GroupId, Layout } from '../system/channel';
import { localMarks } from '../locale/decimal-mark';
import { inPlainLocale, localeInForce } from '../locale/locale-in-force';
import { withUnit } from '../locale/number-text';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import { wireLayout } from '../system/wiring/wire-layout';
import { sayDb, sayHz, sayNumber } from './phrases';
import type { Proposal, TypedValue } from './proposal';

/** What was typed before: the text of each line by its id. A line is ticked while they agree. */
export type TypedSettings = Readonly<Record<string, string>>;

/** One value to type. */
export interface SettingsLine {
  /** Names the value for good, such as "distance SiL". */
  readonly id: string;
  readonly section: 'crossovers' | 'distances' | 'levels' | 'subs';
  /** What the processor calls it: the name of its output or of the group. */
  readonly name: string;
  readonly channel: ChannelLabel | null;
  readonly group: GroupId | null;
  /** As it is typed, with its unit, in the form it is kept in; null where it cannot be told. */
  readonly text: string | null;
  readonly ticked: boolean;
  /** The text typed before where it was another one; null where it was this one or none. */
  readonly before: string | null;
}

/**
 * Everything to type, in the order of a sheet's outputs and in its units, in the order of the layout
 * without a sheet: crossovers, distances, levels, then what the subs alone have.
 */
export function settingsList(
  proposal: Proposal,
  layout: Layout,
  sheet: ProcessorSheet | null,
  typed: TypedSettings,
): SettingsLine[] {
  // What was ticked is kept by its text, which must not change with the locale.
  return inPlainLocale(() => listed(proposal, layout, sheet, typed));
}

/** A line's text as the screen shows it: a word, or with the locale's decimal mark, on one line. */
export function shownText(text: string): string {
  if (isStateName(text)) return stateWord(text);
  return localMarks(text).replace(/(\d) (?=\S)/g, `$1${localeInForce().space}`);
}

function listed(
  proposal: Proposal,
  layout: Layout,
  sheet: ProcessorSheet | null,
  typed: TypedSettings,
): SettingsLine[] {
  const outputs = outputsOf(layout, sheet);
  const line = (
    one: Pick<SettingsLine, 'section' | 'name' | 'text'> & Partial<SettingsLine> & { id: string },
  ): SettingsLine => {
    const was = typed[one.id] ?? null;
    const { text } = one;
    return {
      channel: null,
      group: null,
      ...one,
      ticked: text !== null && was === text,
      before: was === text ? null : was,
    };
  };
  const groupOf = (label: ChannelLabel): GroupId | undefined =>
    layout.channels.find((channel) => channel.label === label)?.group;
  const groups = [...new Set(outputs.flatMap(({ channel }) => groupOf(channel) ?? []))];
  const valueOf = (label: ChannelLabel, key: 'distance' | 'level'): string | null => {
    const value = proposal.channels.find(({ channel }) => channel === label)?.[key] ?? null;
    return value && sayValue(value);
  };
  return [
    ...groups.flatMap((group) => {
      const known = proposal.groups.find((one) => one.group === group);
      if (!known) return [];
      const text = sayCrossover(proposal.settings.crossoverHz[group] ?? null);
      return [line({ id: `crossover ${group}`, section: 'crossovers', name: group, group, text })];
    }),
    ...(['distance', 'level'] as const).flatMap((key) =>
      outputs.map(({ name, channel }) =>
        line({
          id: `${key} ${channel}`,
          section: key === 'distance' ? 'distances' : 'levels',
          name,
          channel,
          text: valueOf(channel, key),
        }),
      ),
    ),
    ...subLines(proposal, sheet).map(line),
  ];
}

function subLines({ subs, settings }: Proposal, sheet: ProcessorSheet | null) {
  if (!subs) return [];
  const section = 'subs' as const;
  const off = (hz: number | null): string => (hz === null ? 'off' : sayHz(hz));
  return [
    ...subs.subs.map(({ channel, polarity }) => ({
      id: `polarity ${channel}`,
      section,
      name: msg(str`Polarity of ${channel}`),
      channel,
      text: polarity,
    })),
    ...(sheet
      ? [
          {
            id: 'sub low-pass',
            section,
            name: msg('Sub low-pass'),
            text: off(settings.subLowPassHz),
          },
        ]
      : []),
    ...(sheet && sheet.lowCut.stepsHz.length > 0
      ? [{ id: 'low cut', section, name: msg('Low cut'), text: off(settings.lowCutHz) }]
      : []),
  ];
}

/** The record with a line ticked as typed, or no longer. */
export function tickLine(
  typed: TypedSettings,
  { id, text }: Pick<SettingsLine, 'id' | 'text'>,
  ticked: boolean,
): TypedSettings {
  const others = Object.entries(typed).filter(([key]) => key !== id);
  return Object.fromEntries(ticked && text !== null ? [...others, [id, text]] : others);
}

function outputsOf(layout: Layout, sheet: ProcessorSheet | null) {
  const wiring = sheet && wireLayout(layout, sheet);
  if (wiring?.wired) return wiring.outputs.map(({ name, channel }) => ({ name, channel }));
  return layout.channels.map(({ label }) => ({ name: label, channel: label }));
}

function sayCrossover(hz: number | null): string {
  return hz === null ? 'full range' : sayHz(hz);
}

/** A value with as many decimals as its step has, and its unit. */
export function sayValue({ value, unit, step }: TypedValue): string {
  const decimals = Math.min(4, (String(Number(step.toFixed(4))).split('.')[1] ?? '').length);
  if (unit === 'dB' && decimals <= 1) return sayDb(value);
  const sign = unit === 'dB' && value > 0 ? '+' : '';
  return `${sign}${withUnit(sayNumber(value, decimals), unit)}`;
}
