import type { ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import { partnerLabel } from '../system/partner-label';
import type { ProcessorSettings } from '../system/processor-settings';
import type { PracticeSlip } from './practice-slips';

/** Differences of distances and trims below these do no harm, m and dB. */
const leastMetres = 0.07;
const leastDb = 0.5;

/**
 * One mistake to be found by proving, drawn from all that do harm in a layout; `share` from 0 to
 * below 1 says which. Without settings only those whose harm does not depend on numbers. Throws
 * RangeError for another share.
 */
export function drawPracticeSlip(
  layout: Layout,
  typed: ProcessorSettings | null,
  share: number,
): PracticeSlip {
  if (!(share >= 0 && share < 1)) {
    throw new RangeError(`share must be from 0 to below 1, got ${share}`);
  }
  const all = [...slipsOfSettings(layout, typed), ...slipsOfNumbers(layout, typed)];
  return all[Math.floor(share * all.length)] ?? dynamics;
}

const dynamics = { kind: 'dynamics', thresholdDb: -30, share: 0.5 } as const;

function slipsOfSettings(layout: Layout, typed: ProcessorSettings | null): PracticeSlip[] {
  const labels = layout.channels.map(({ label }) => label);
  const subs = labels.filter(isSub);
  const groups = [...new Set(layout.channels.map(({ group }) => group))].filter(
    (group) =>
      group !== 'subs' && (typed ? typeof typed.crossoverHz[group] === 'number' : subs.length > 0),
  );
  const ofSubs: PracticeSlip[] =
    subs.length === 0
      ? []
      : [
          { kind: 'own low-pass', channels: subs, hz: 60, order: 4 },
          { kind: 'LFE level', offDb: -10 },
          ...subs.map((label) => ({ kind: 'inverted' as const, channels: [label] })),
        ];
  return [
    dynamics,
    { kind: 'equaliser', channels: labels, gainDb: 5 },
    ...(labels.includes('FC')
      ? [{ kind: 'upmixing' as const, to: 'FC' as const, gainDb: -6 }]
      : []),
    ...groups.map((group) => ({ kind: 'full range' as const, group })),
    ...ofSubs,
  ];
}

function slipsOfNumbers(layout: Layout, typed: ProcessorSettings | null): PracticeSlip[] {
  if (!typed) return [];
  const labels = layout.channels.map(({ label }) => label);
  const mains = labels.filter((label) => !isSub(label));
  const metres = (label: ChannelLabel): number => typed.distanceMetres[label] ?? 0;
  const apart = (label: ChannelLabel): number => {
    const other = partnerLabel(label);
    return other ? Math.abs(metres(label) - metres(other)) : 0;
  };
  const sided = greatest(mains, apart);
  const trimmed = greatest(labels, (label) => Math.abs(typed.trimDb[label] ?? 0));
  const far = greatest(mains, metres);
  return [
    ...(sided && apart(sided) > leastMetres
      ? [{ kind: 'wrong side' as const, channels: [sided] }]
      : []),
    ...(trimmed && Math.abs(typed.trimDb[trimmed] ?? 0) > leastDb
      ? [{ kind: 'wrong sign' as const, channels: [trimmed] }]
      : []),
    ...(far && metres(far) > leastMetres
      ? [{ kind: 'wrong unit' as const, taken: 'feet' as const, channels: [far] }]
      : []),
  ];
}

function greatest(
  labels: readonly ChannelLabel[],
  size: (label: ChannelLabel) => number,
): ChannelLabel | null {
  return labels.toSorted((a, b) => size(b) - size(a))[0] ?? null;
}
