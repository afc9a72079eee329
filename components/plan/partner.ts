import type { Channel, Layout } from '../../src/system/channel';

/** The speakers that share a crossover with this one; none when it stands alone. */
export function partnersOf(channel: Channel, layout: Layout): Channel[] {
  return layout.channels.filter(
    (other) => other.group === channel.group && other.label !== channel.label,
  );
}
