import { msg } from '@lit/localize';
import { isTrouble } from '../../trouble';
import type { ChannelLabel, Layout } from '../channel';
import { layoutChoices, layoutFromName } from '../layout';
import type { NearLayout } from './wiring';
import { isSub } from '../channel-names';

const mostOffered = 5;

/** Made once: making one takes longer than a thousand comparisons. */
const byName = new Intl.Collator('en', { numeric: true });

/** What a layout counts in: one change adds or takes away one unit. */
interface Units {
  readonly counts: readonly number[];
}

const unitNames = (): readonly (readonly [one: string, more: string])[] => [
  [msg('the front centre'), ''],
  [msg('the side surrounds'), ''],
  [msg('the back surrounds'), ''],
  [msg('the wides'), ''],
  [msg('pair of heights'), msg('pairs of heights')],
  ['sub', 'subs'],
];

const everyLayout: readonly { readonly candidate: Layout; readonly units: Units }[] =
  layoutChoices.beds.flatMap((bed) =>
    layoutChoices.subs.flatMap((subs) =>
      layoutChoices.heights.flatMap((heights) => {
        const layout = layoutFromName(`${bed}.${subs}.${heights}`);
        return isTrouble(layout) ? [] : [{ candidate: layout, units: unitsOf(layout) }];
      }),
    ),
  );

/**
 * The layouts nearest to one that can be wired: fewest changes first, then those that add least,
 * then fewest speakers more or fewer, then by name. A change is one pair, the centre or one sub more or less.
 */
export function nearestLayouts(
  layout: Layout,
  canWire: (candidate: Layout) => boolean,
): NearLayout[] {
  const from = unitsOf(layout);
  const ranked = everyLayout
    .map(({ candidate, units }) => ({ candidate, units, ...distance(from, units) }))
    .filter(({ changed }) => changed > 0)
    .sort(
      (a, b) =>
        a.changed - b.changed ||
        a.added - b.added ||
        speakersBetween(a.candidate, layout) - speakersBetween(b.candidate, layout) ||
        byName.compare(a.candidate.name, b.candidate.name),
    );
  const found: NearLayout[] = [];
  for (const { candidate, units } of ranked) {
    if (found.length === mostOffered) break;
    if (!canWire(candidate)) continue;
    found.push({ name: candidate.name, changes: changesTo(from, units) });
  }
  return found;
}

function speakersBetween(a: Layout, b: Layout): number {
  return Math.abs(a.channels.length - b.channels.length);
}

function unitsOf({ channels }: Layout): Units {
  const labels = channels.map((channel) => channel.label);
  const has = (...any: ChannelLabel[]) => Number(any.some((label) => labels.includes(label)));
  const heights = has('TpFL', 'TpFR') + has('TpSiL', 'TpSiR') + has('TpBL', 'TpBR');
  const subs = labels.filter(isSub).length;
  return {
    counts: [has('FC'), has('SiL', 'SiR'), has('BL', 'BR'), has('FLw', 'FRw'), heights, subs],
  };
}

function distance(from: Units, to: Units): { changed: number; added: number } {
  let changed = 0;
  let added = 0;
  for (const [index, count] of to.counts.entries()) {
    const difference = count - (from.counts[index] ?? 0);
    changed += Math.abs(difference);
    added += Math.max(difference, 0);
  }
  return { changed, added };
}

function changesTo(from: Units, to: Units): string[] {
  return to.counts.flatMap((count, index) => {
    const difference = count - (from.counts[index] ?? 0);
    const [one, more] = unitNames()[index] ?? ['', ''];
    if (difference === 0) return [];
    if (more === '') return [`${difference > 0 ? 'with' : 'without'} ${one}`];
    const size = Math.abs(difference);
    return [`${size} ${size === 1 ? one : more} ${difference > 0 ? 'more' : 'fewer'}`];
  });
}
