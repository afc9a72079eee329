import { seededRandom } from '../../dsp/signal/random';
import type { ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import type { WiringFinding } from '../wirecheck/wiring-finding';
import type { PracticeFaults } from './practice-system';

/** A fault somebody hid in the wiring, and what a right check says of it. */
export interface Miswiring {
  readonly kind: 'exchanged' | 'round' | 'silent' | 'doubled' | 'inverted';
  readonly faults: Pick<PracticeFaults, 'wiring' | 'inverted'>;
  readonly findings: readonly WiringFinding[];
}

/** What is hidden in a practice room's wiring; nothing for null and layouts too small for it. */
export function hiddenFaults(layout: Layout, hidden: number | null): Miswiring['faults'] {
  if (hidden === null || layout.channels.length < leastSpeakers) return {};
  return drawMiswiring(layout, hidden).faults;
}

const leastSpeakers = 4;
const kinds = ['exchanged', 'round', 'silent', 'doubled', 'inverted'] as const;

/**
 * One invented fault in a layout's wiring; the same seed is the same fault, and seeds one after
 * another go through the kinds. Subs are never inverted: their polarity cannot be told from an
 * arrival. Throws RangeError for a layout of fewer than four speakers.
 */
export function drawMiswiring(layout: Layout, seed: number): Miswiring {
  const random = seededRandom(seed + 0.3125);
  for (let n = 0; n < 8; n++) random();
  const labels = layout.channels.map(({ label }) => label);
  if (labels.length < leastSpeakers)
    throw new RangeError(`${layout.name} has too few speakers to exchange`);
  const kind = kinds[Math.abs(Math.round(seed)) % kinds.length] ?? 'exchanged';
  const mains = labels.filter((label) => !isSub(label));
  const drawn = (from: readonly ChannelLabel[], count: number): ChannelLabel[] => {
    const left = [...from];
    return Array.from({ length: count }, () => left.splice(Math.floor(random() * left.length), 1))
      .flat()
      .slice(0, count);
  };
  switch (kind) {
    case 'exchanged':
    case 'round': {
      const channels = drawn(labels, kind === 'exchanged' ? 2 : 3 + Math.floor(2 * random()));
      const next = (at: number): ChannelLabel => channels[(at + 1) % channels.length] ?? 'FL';
      const wiring = Object.fromEntries(channels.map((label, at) => [label, [next(at)]]));
      return { kind, faults: { wiring }, findings: [{ kind: 'exchanged', channels }] };
    }
    case 'silent': {
      const [channel = 'FL'] = drawn(labels, 1);
      const findings: WiringFinding[] = [
        { kind: 'silent', channel },
        { kind: 'mute speaker', speaker: channel },
      ];
      return { kind, faults: { wiring: { [channel]: [] } }, findings };
    }
    case 'doubled': {
      const [channel = 'FL', other = 'FR'] = drawn(mains, 2);
      // The other speaker hangs on this channel's output, and its own channel on nothing.
      const wiring = { [channel]: [channel, other], [other]: [] };
      const findings: WiringFinding[] = [
        { kind: 'silent', channel: other },
        { kind: 'doubled', channel, from: [channel, other] },
      ];
      return { kind, faults: { wiring }, findings };
    }
    case 'inverted': {
      const [speaker = 'FL'] = drawn(mains, 1);
      return { kind, faults: { inverted: [speaker] }, findings: [{ kind: 'inverted', speaker }] };
    }
  }
}
