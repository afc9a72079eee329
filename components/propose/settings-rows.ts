import type { ChannelProposal } from '../../src/proposal/proposal';
import type { BenchState } from '../../src/session/bench';
import type { Channel } from '../../src/system/channel';
import { hzText, isNumber, metresText, signedText, thinSpace } from '../charts/number-text';
import { crossoverInForce } from './propose-view';

/** One line of the table of settings: what to type, and why. */
export interface SettingsRow {
  readonly channel: Channel;
  readonly distance: string;
  readonly level: string;
  readonly crossover: string;
  /** True when the tuner set another crossover than the proposed one. */
  readonly chosen: boolean;
  readonly polarity: ChannelProposal['polarity'];
  readonly reasons: readonly { readonly of: string; readonly text: string }[];
  readonly warnings: readonly string[];
}

const unknown = 'cannot tell';

/** The settings of every speaker in the order of the plan. */
export function settingsRows(state: BenchState): SettingsRow[] {
  const { proposal, layout, document } = state;
  if (!proposal) return [];
  const hasSubs = layout.channels.some(({ kind }) => kind === 'sub');
  return layout.channels.flatMap((channel) => {
    const found = proposal.channels.find((one) => one.channel === channel.label);
    if (!found) return [];
    const group = proposal.groups.find((one) => one.group === channel.group) ?? null;
    const chosenHz = document.chosenCrossoverHz[channel.group] ?? null;
    const chosen = chosenHz !== null && chosenHz !== group?.crossoverHz;
    return [
      {
        channel,
        distance: isNumber(found.distanceMetres) ? metresText(found.distanceMetres) : unknown,
        level: isNumber(found.levelTrimDb)
          ? `${signedText(found.levelTrimDb, 1)}${thinSpace}dB`
          : unknown,
        crossover: crossoverText(channel, crossoverInForce(state, channel.group), hasSubs),
        chosen,
        polarity: found.polarity,
        reasons: [
          { of: 'Distance', text: found.distanceReason },
          { of: 'Level trim', text: found.levelReason },
          ...(group
            ? [{ of: 'Crossover', text: chosen ? `Set by you. ${group.reason}` : group.reason }]
            : []),
        ].filter(({ text }) => text !== ''),
        warnings: found.warnings,
      },
    ];
  });
}

function crossoverText(channel: Channel, hz: number | null, hasSubs: boolean): string {
  if (channel.kind === 'sub') return '–';
  if (isNumber(hz)) return hzText(hz);
  return hasSubs ? 'none' : 'full range';
}

/** The settings as tab-separated text with plain signs, for a spreadsheet. */
export function settingsCopy(state: BenchState): string {
  const cell = (value: number | null | undefined, digits: number) =>
    isNumber(value) ? String(Number(value.toFixed(digits))) : '';
  const lines = state.layout.channels.map(({ label, group, kind }) => {
    const found = state.proposal?.channels.find((one) => one.channel === label);
    return [
      label,
      cell(found?.distanceMetres, 3),
      cell(found?.levelTrimDb, 2),
      kind === 'sub' ? '' : cell(crossoverInForce(state, group), 0),
      found?.polarity ?? '',
    ].join('\t');
  });
  return `speaker\tdistance m\tlevel trim dB\tcrossover Hz\tpolarity\n${lines.join('\n')}\n`;
}
