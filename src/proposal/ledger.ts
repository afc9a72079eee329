import {
  bassLedger,
  type LedgerChannel,
  type LedgerLine,
  type LedgerSettings,
} from '../../dsp/bass/bass-ledger';
import type { LedgerCurve } from '../../dsp/bass/ledger-curves';
import type { ChannelLabel } from '../system/channel';
import { filterOf } from '../reading/take-out-filter';
import { lowCutFilter, subLowPassFilter, type Abilities } from './abilities';
import type { BassSettings } from './bass-settings';
import type { ChannelMeasurement } from './channel-measurement';
import { rolloffCurve } from './rolloff-curve';

/** Settings the ledger depends on. */
export type LedgerChoice = Pick<BassSettings, 'crossoverHz' | 'subLowPassHz' | 'lowCutHz'>;

/** What of a ledger does not change while settings are tried. */
export interface LedgerGround {
  readonly channels: readonly {
    readonly label: ChannelLabel;
    readonly group: ChannelMeasurement['channel']['group'];
    readonly curve: LedgerCurve;
  }[];
  readonly subs: readonly LedgerCurve[];
  readonly fronts: readonly LedgerCurve[];
  readonly hasSubs: boolean;
  /** Channels whose roll-off is not known. */
  readonly unknown: readonly ChannelLabel[];
  readonly abilities: Abilities;
}

/** LFE's own band ends here, Hz (ITU-R BS.775, from memory). */
export const lfeHz = 120;

/** The speakers of a ledger with their roll-offs. */
export function ledgerGround(
  members: readonly ChannelMeasurement[],
  abilities: Abilities,
): LedgerGround {
  const known = members.flatMap(({ channel, reading }) =>
    reading?.rolloff ? [{ channel, curve: rolloffCurve(reading.rolloff) }] : [],
  );
  const curvesOf = (group: string): LedgerCurve[] =>
    known.filter(({ channel }) => channel.group === group).map(({ curve }) => curve);
  return {
    channels: known.flatMap(({ channel: { label, group, kind }, curve }) =>
      kind === 'sub' ? [] : [{ label, group, curve }],
    ),
    subs: curvesOf('subs'),
    fronts: curvesOf('fronts'),
    hasSubs: members.some(({ channel }) => channel.kind === 'sub'),
    unknown: members.flatMap(({ channel, reading }) => (reading?.rolloff ? [] : [channel.label])),
    abilities,
  };
}

/**
 * Where the bass of every channel, and of LFE, goes; only of `only` where that is given. Empty where
 * there are subs and nothing is known of any.
 */
export function ledgerLines(
  ground: LedgerGround,
  choice: LedgerChoice,
  only: readonly string[] | null = null,
): LedgerLine[] {
  const { abilities, subs, fronts, hasSubs } = ground;
  if (hasSubs && subs.length === 0) return [];
  const wanted = (name: string): boolean => only === null || only.includes(name);
  const channels: LedgerChannel[] = ground.channels.flatMap(({ label, group, curve }) =>
    wanted(label)
      ? [{ name: label, speaker: curve, crossoverHz: choice.crossoverHz[group] ?? null }]
      : [],
  );
  const carried = hasSubs || fronts.length > 0;
  const lfe = wanted('LFE') && carried ? [{ name: 'LFE', speaker: null, crossoverHz: null }] : [];
  const { highPass, subLowPass } = abilities.filters;
  const settings: LedgerSettings = {
    channels: [...channels, ...lfe],
    subs,
    fronts: hasSubs ? [] : fronts,
    highPass: shapeOf(filterOf(highPass, 'high-pass', lfeHz)),
    lowPass: shapeOf(filterOf(subLowPass, 'low-pass', lfeHz)),
    subLowPass:
      choice.subLowPassHz === null ? null : subLowPassFilter(abilities, choice.subLowPassHz),
    lowCut: choice.lowCutHz === null ? null : lowCutFilter(choice.lowCutHz),
    lfeLowPass: filterOf(subLowPass, 'low-pass', lfeHz),
    copiedBelowHz: null,
  };
  return bassLedger(settings);
}

function shapeOf({ family, order }: LedgerSettings['lfeLowPass']): LedgerSettings['lowPass'] {
  return { family, order };
}
