import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../../system/channel';
import { eightOutputs } from '../../take/assign-outputs';
import { trouble, type Trouble } from '../../trouble';

/** Index of the output that feeds each speaker, from 0. */
export type OutputRoute = ReadonlyMap<ChannelLabel, number>;

/**
 * Which output feeds which speaker. `wired` wins; otherwise, with 8 outputs or more, speakers that
 * a 7.1 output names go to their own place and the rest to the first free ones; with fewer, all in
 * order. Only a wire check can tell whether the system remaps. Throws RangeError when `wired`
 * holds no whole number from 0 or one twice.
 */
export function routeOutputs(
  channels: readonly ChannelLabel[],
  outputs: number,
  wired: Readonly<Partial<Record<ChannelLabel, number>>> = {},
): OutputRoute | Trouble {
  if (channels.length > outputs) {
    return trouble(
      'no-output',
      msg(
        str`This output has ${outputs} ${outputs === 1 ? msg('channel') : msg('channels')} and the layout has ${channels.length} speakers. Choose an output with more channels, set it to surround in the system's sound settings, or use the recording instead.`,
      ),
    );
  }
  const route = new Map<ChannelLabel, number>();
  const taken = new Set<number>();
  const put = (channel: ChannelLabel, output: number): void => {
    route.set(channel, output);
    taken.add(output);
  };
  for (const channel of channels) {
    const output = wired[channel];
    if (output === undefined) continue;
    if (!Number.isInteger(output) || output < 0 || taken.has(output)) {
      throw new RangeError(`outputs must be different whole numbers from 0, got ${output}`);
    }
    if (output >= outputs) {
      return trouble(
        'no-output',
        msg(
          str`Speaker ${channel} is wired to output ${output + 1}, but this output device has ${outputs}. Change the wiring or choose another output.`,
        ),
      );
    }
    put(channel, output);
  }
  if (outputs >= eightOutputs.length) {
    for (const channel of channels) {
      const output = eightOutputs.indexOf(channel);
      if (!route.has(channel) && output >= 0 && !taken.has(output)) put(channel, output);
    }
  }
  let free = 0;
  for (const channel of channels) {
    if (route.has(channel)) continue;
    while (taken.has(free)) free++;
    put(channel, free);
  }
  return route;
}
