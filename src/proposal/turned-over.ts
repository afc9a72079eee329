import type { ChannelLabel } from '../system/channel';

/** What is inverted once some channels are turned over: of these, those that were not before. */
export function turnedOver(
  inverted: readonly ChannelLabel[],
  turned: readonly ChannelLabel[],
): ChannelLabel[] {
  return [
    ...inverted.filter((label) => !turned.includes(label)),
    ...turned.filter((label) => !inverted.includes(label)),
  ];
}
