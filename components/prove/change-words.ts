import { metresPerFoot } from '../../src/locale/length-text';
import { withUnit } from '../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import type { SettingChange } from '../../src/proof/proof';
import { sayNumber } from '../../src/proposal/phrases';
import type { ChannelLabel, Layout } from '../../src/system/channel';
import { isSub } from '../../src/system/channel-names';
import { placeAddress } from '../controls/reveal-controller';
import { patchSheetAddress } from '../patch/patch-sheets';
import { groupName } from '../propose/group-words';
import { proposeSheetAddress } from '../propose/propose-sheets';
import { sayNames } from './slip-words';

const names: Readonly<Record<SettingChange['setting'], string>> = {
  get distance() {
    return msg('Distance');
  },
  get trim() {
    return msg('Level trim');
  },
  get polarity() {
    return msg('Polarity');
  },
  get crossover() {
    return msg('Crossover');
  },
  get 'own low-pass of the sub'() {
    return msg('Own low-pass');
  },
  get 'LFE level'() {
    return msg('LFE level');
  },
  get 'equaliser and dynamics'() {
    return msg('Equaliser and dynamics');
  },
  get upmixing() {
    return msg('Upmixing');
  },
  get wiring() {
    return msg('Wiring');
  },
};

const decimals = { m: 2, dB: 1, Hz: 0 } as const;

/** What to change, as one sentence: "Distance of SiL: 2.10 m; it seems to be 6.89 m." */
export function sayChange(change: SettingChange, layout: Layout, unit: 'm' | 'ft'): string {
  const { setting, channels, group, from, to } = change;
  const of =
    channels.length > 0 ? sayNames(channels) : group === null ? '' : groupName(group, layout);
  const start = of === '' ? names[setting] : msg(str`${names[setting]} of ${of}`);
  const value = (one: number | string): string => sayValue(one, change.unit, unit);
  const seems = from === null || from === to ? '' : msg(str`; it seems to be ${value(from)}`);
  return `${start}: ${value(to)}${seems}.`;
}

/** Where the setting of a change is shown: a place on the sheet that has it. */
export function addressOf(change: SettingChange, layout: Layout): string {
  const { setting, group } = change;
  const channel = channelOf(change, layout);
  const onList = (key: string): string =>
    placeAddress(proposeSheetAddress('list'), `${key} ${channel}`);
  switch (setting) {
    case 'distance':
      return onList('distance');
    case 'trim':
      return onList('level');
    case 'polarity':
      // Of a main the wires are swapped; nothing is typed.
      return channel !== null && isSub(channel) ? onList('polarity') : onWiring(channel);
    case 'crossover':
      return placeAddress(proposeSheetAddress('crossovers'), group ?? '');
    case 'own low-pass of the sub':
      return placeAddress(proposeSheetAddress('subs'), msg('at the sub itself'));
    case 'LFE level':
      return placeAddress(proposeSheetAddress('bass'), 'LFE');
    case 'equaliser and dynamics':
    case 'upmixing':
      return placeAddress(patchSheetAddress('in-force'), 'equaliser');
    case 'wiring':
      return onWiring(channel);
  }
}

function onWiring(channel: ChannelLabel | null): string {
  return placeAddress(patchSheetAddress('wiring'), channel ?? '');
}

/** The speaker a change is shown with; null where it concerns none alone. */
export function channelOf({ channels, group }: SettingChange, layout: Layout): ChannelLabel | null {
  const [label] = channels;
  if (label !== undefined) return label;
  return layout.channels.find((channel) => channel.group === group)?.label ?? null;
}

function sayValue(
  value: number | string,
  unit: SettingChange['unit'],
  distances: 'm' | 'ft',
): string {
  if (typeof value === 'string') return value;
  if (unit === null) return sayNumber(value, 1);
  if (unit === 'm' && distances === 'ft')
    return withUnit(sayNumber(value / metresPerFoot, 1), 'ft');
  const sign = unit === 'dB' && value > 0 ? '+' : '';
  return `${sign}${withUnit(sayNumber(value, decimals[unit]), unit)}`;
}
