import { findSource } from '../../../src/inspect/find-source';
import type { SoundSource } from '../../../src/inspect/inspection';
import type { BenchState } from '../../../src/session/bench';
import type { Channel, ChannelLabel, Layout } from '../../../src/system/channel';
import { groupColour } from '../../group-colour';
import type { CurveTrace } from '../../charts/curve/curve-trace';
import { positionsOf } from '../take/positions';
import type { InspectWishes } from './inspect-wishes';

/** A source as it is shown: whose it is, where it was heard, how its line looks. */
export interface ShownSource extends SoundSource {
  readonly group: Channel['group'];
  readonly name: string;
  readonly colour: string;
  readonly stroke: CurveTrace['stroke'];
}

/** Speakers that are looked at: those asked for, else the one picked on the plan, else the first. */
export function shownChannels(
  { layout }: { readonly layout: Layout },
  wishes: InspectWishes,
  selected: ChannelLabel | null,
): readonly Channel[] {
  const asked = layout.channels.filter(({ label }) => wishes.channels?.includes(label));
  if (asked.length > 0) return asked;
  const picked = layout.channels.find(({ label }) => label === selected);
  return picked ? [picked] : layout.channels.slice(0, 1);
}

/** What was heard of them at the current position and the seats asked for beside it. */
export function shownSources(
  { document, layout }: BenchState,
  wishes: InspectWishes,
  selected: ChannelLabel | null,
): ShownSource[] {
  const seats = positionsOf(document)
    .map(({ position }) => position)
    .filter(({ id }) => id === document.position.id || wishes.seats.includes(id));
  return seats.flatMap((seat) =>
    shownChannels({ layout }, wishes, selected).flatMap((channel) => {
      const source = findSource(document.takes, layout.name, seat.id, channel.label);
      if (!source) return [];
      const here = seat.id === document.position.id;
      return [
        {
          ...source,
          group: channel.group,
          name: seats.length > 1 ? `${channel.label}, ${seat.name}` : channel.label,
          colour: groupColour(channel.group),
          stroke: here ? strokeOf(channel, layout) : ('dotted' as const),
        },
      ];
    }),
  );
}

/** Speakers of a group share its colour: the first is drawn solid, the others dashed. */
function strokeOf(channel: Channel, layout: Layout): CurveTrace['stroke'] {
  const first = layout.channels.find(({ group }) => group === channel.group);
  return first?.label === channel.label ? 'solid' : 'dashed';
}
