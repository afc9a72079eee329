import { msg, str } from '@lit/localize';
import type { ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import { referenceChannel } from '../system/layout';
import { trouble, type Trouble } from '../trouble';
import type { Routing } from './take-plan';

/** Order of the channels of a 7.1 output as systems usually give it (channel mask 63Fh). */
export const eightOutputs: readonly ChannelLabel[] = [
  'FL',
  'FR',
  'FC',
  'Sub 1',
  'BL',
  'BR',
  'SiL',
  'SiR',
];

/** Speakers of each output, by its number, in the order they are to sound there. */
export type OutputAssignment = ReadonlyMap<number, readonly ChannelLabel[]>;

/**
 * Gives every speaker of a layout an output. What the tuner placed stays; subs go to the output
 * that is replayed as LFE, where there is one, since a processor has no other for them; then, with
 * eight outputs or more, each goes to its usual one; then to the first free one, in the layout's order. Speakers
 * left over share: they are spread evenly over the outputs of other speakers, never the reference's
 * (its marks join all parts) and a sub's only when there is no other. Fewest parts, and one plug to
 * move for each speaker left over, which is the least there can be.
 */
export function assignOutputs(layout: Layout, routing: Routing): OutputAssignment | Trouble {
  const { outputs, routes } = routing;
  const labels = layout.channels.map(({ label }) => label);
  const reference = referenceChannel(layout);
  const speakers = new Map<number, ChannelLabel[]>();
  const placed = new Set<ChannelLabel>();
  const put = (label: ChannelLabel, output: number): void => {
    speakers.set(output, [...(speakers.get(output) ?? []), label]);
    placed.add(label);
  };
  for (const label of labels) {
    const output = routes[label];
    if (output === undefined) continue;
    if (output >= outputs) return noSuchOutput(label, output, outputs);
    put(label, output);
  }
  const { lfeOutput } = routing;
  if (lfeOutput !== null && lfeOutput < outputs) {
    for (const label of labels) if (isSub(label) && !placed.has(label)) put(label, lfeOutput);
  }
  const isFree = (output: number): boolean => output < outputs && !speakers.has(output);
  const offer = (label: ChannelLabel, output: number): void => {
    if (!placed.has(label) && isFree(output)) put(label, output);
  };
  if (outputs >= eightOutputs.length) {
    for (const label of labels) {
      const usual = eightOutputs.indexOf(label);
      if (usual >= 0) offer(label, usual);
    }
  }
  // The reference first: with few outputs it must not be left over.
  for (const label of [reference, ...labels]) {
    for (let output = 0; output < outputs && !placed.has(label); output++) offer(label, output);
  }
  for (const label of labels) {
    if (!placed.has(label)) put(label, leastShared(speakers, reference, outputs));
  }
  return speakers;
}

/** The output on which another speaker waits least, by how many share it; mains before subs. */
function leastShared(
  speakers: ReadonlyMap<number, readonly ChannelLabel[]>,
  reference: ChannelLabel,
  outputs: number,
): number {
  const cost = ([output, sharing]: [number, readonly ChannelLabel[]]): number =>
    (outputs > 1 && sharing.includes(reference) ? 1e6 : 0) +
    (sharing.some(isSub) ? 1e3 : 0) +
    sharing.length +
    output / 1000;
  const [best] = [...speakers].sort((a, b) => cost(a) - cost(b));
  return best?.[0] ?? 0;
}

function noSuchOutput(label: ChannelLabel, output: number, outputs: number): Trouble {
  const has = outputs === 1 ? msg('one channel') : msg(str`${outputs} channels`);
  return trouble(
    'no-output',
    msg(
      str`Speaker ${label} is on output ${output + 1}, but this output device has ${has}. Give it another output, or choose another device.`,
    ),
  );
}
