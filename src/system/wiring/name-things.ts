import { msg, str } from '@lit/localize';
import { groupWord } from '../group-word';
import type { ChannelLabel } from '../channel';
import { channelGroup, channelName } from '../channel-names';
import { partnerLabel } from '../partner-label';

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : msg(str`${words.slice(0, -1).join(', ')} and ${last}`);
}

/** Channels in plain words: whole pairs by their group, such as "the side surrounds". */
export function nameChannels(labels: readonly ChannelLabel[]): string {
  const names = labels.map((label) => {
    const partner = partnerLabel(label);
    if (partner !== null && labels.includes(partner)) return msg(str`the ${groupName(label)}`);
    return channelGroup(label) === 'subs'
      ? channelName(label)
      : msg(str`the ${channelName(label)}`);
  });
  return listed([...new Set(names)]);
}

function groupName(label: ChannelLabel): string {
  return groupWord(channelGroup(label));
}

/** The same at the head of a sentence. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
