import type { Slip } from '../../src/proof/proof';
import type { PracticeSlip } from '../../src/rig/practice-slips';
import type { ChannelLabel, GroupId } from '../../src/system/channel';
import { isSub } from '../../src/system/channel-names';
import { partnerLabel } from '../../src/system/partner-label';
import type { ProvedRoom } from '../src/proof/proved-room';

/** A mistake in one room, and what a proof must call it. */
export interface PlannedSlip {
  readonly name: string;
  readonly slip: PracticeSlip;
  readonly called: Slip;
  /** Channels of which at least one must be among those of the change; groups by their name. */
  readonly concerns: readonly (ChannelLabel | GroupId)[];
}

/** Differences of distances and trims below these do no harm, m and dB. */
const leastMetres = 0.07;
const leastDb = 0.5;

/** Every mistake that does harm in a room, one at a time. */
export function slipsOf({ layout, typed }: Pick<ProvedRoom, 'layout' | 'typed'>): PlannedSlip[] {
  const labels = layout.channels.map(({ label }) => label);
  const mains = labels.filter((label) => !isSub(label));
  const subs = labels.filter(isSub);
  const metres = (label: ChannelLabel): number => typed.distanceMetres[label] ?? 0;
  const trim = (label: ChannelLabel): number => typed.trimDb[label] ?? 0;
  const apart = (label: ChannelLabel): number => {
    const other = partnerLabel(label);
    return other ? Math.abs(metres(label) - metres(other)) : 0;
  };
  const most = (of: readonly ChannelLabel[], size: (label: ChannelLabel) => number) =>
    of.toSorted((a, b) => size(b) - size(a))[0] ?? 'FL';
  const size = (label: ChannelLabel): number => Math.abs(trim(label));
  const sided = most(mains, apart);
  const trimmed = most(
    mains.filter((label) => label !== 'FL'),
    size,
  );
  const [sub] = subs;
  const groups = [...new Set(layout.channels.map(({ group }) => group))].filter(
    (group) => group !== 'subs',
  );
  const plan = (
    name: string,
    slip: PracticeSlip,
    called: Slip,
    concerns: PlannedSlip['concerns'],
  ): PlannedSlip => ({ name, slip, called, concerns });
  return [
    ...(apart(sided) > leastMetres
      ? [plan('wrong side', { kind: 'wrong side', channels: [sided] }, 'wrong side', [sided])]
      : []),
    ...(['feet', 'metres'] as const).map((taken) =>
      plan(
        `all distances taken as ${taken}`,
        { kind: 'wrong unit', taken, channels: labels },
        'feet for metres',
        mains,
      ),
    ),
    plan(
      'one distance taken as feet',
      { kind: 'wrong unit', taken: 'feet', channels: [sided] },
      'feet for metres',
      [sided],
    ),
    ...(size(trimmed) > leastDb
      ? [
          plan(
            'one trim with the wrong sign',
            { kind: 'wrong sign', channels: [trimmed] },
            'wrong sign',
            [trimmed],
          ),
          plan(
            'all trims with the wrong sign',
            { kind: 'wrong sign', channels: labels },
            'wrong sign',
            mains,
          ),
        ]
      : []),
    ...(sub && size(sub) > leastDb
      ? [
          plan(
            'trim of a sub with the wrong sign',
            { kind: 'wrong sign', channels: [sub] },
            'wrong sign',
            [sub],
          ),
        ]
      : []),
    ...groups.map((group) =>
      plan(`${group} left on full range`, { kind: 'full range', group }, 'left on full range', [
        group,
      ]),
    ),
    ...[
      { hz: 60, order: 4 },
      { hz: 80, order: 2 },
    ].map(({ hz, order }) =>
      plan(
        `own low-pass of ${hz} Hz, order ${order}`,
        { kind: 'own low-pass', channels: subs, hz, order },
        'own low-pass on',
        subs,
      ),
    ),
    plan(
      'equaliser on',
      { kind: 'equaliser', channels: labels, gainDb: 5 },
      'equaliser or dynamics on',
      mains,
    ),
    plan(
      'dynamics on',
      { kind: 'dynamics', thresholdDb: -30, share: 0.5 },
      'equaliser or dynamics on',
      mains,
    ),
    ...subs.map((label) =>
      plan(`${label} inverted`, { kind: 'inverted', channels: [label] }, 'inverted', [label]),
    ),
    plan('LFE 10 dB too quiet', { kind: 'LFE level', offDb: -10 }, 'LFE level', subs),
    plan('upmixing on', { kind: 'upmixing', to: 'FC', gainDb: -6 }, 'upmixing on', ['FC']),
  ];
}
