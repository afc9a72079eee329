import type { ChannelLabel } from '../system/channel';
import type { HeardChannel, WiringFinding } from './wiring-finding';

/**
 * Channels that sound from each other's speakers, as closed rounds; what does not close is told
 * channel by channel.
 */
export function describeExchange(heard: readonly HeardChannel[]): WiringFinding[] {
  const speakerOf = new Map(heard.map(({ channel, speaker }) => [channel, speaker]));
  const told = new Set<ChannelLabel>();
  const findings: WiringFinding[] = [];
  for (const { channel, speaker } of heard) {
    if (channel === speaker || told.has(channel)) continue;
    const round = [channel];
    let next: ChannelLabel | undefined = speaker;
    while (next !== undefined && next !== channel && !round.includes(next)) {
      round.push(next);
      next = speakerOf.get(next);
    }
    if (next === channel) {
      for (const each of round) told.add(each);
      findings.push({ kind: 'exchanged', channels: round });
    } else findings.push({ kind: 'elsewhere', channel, from: speaker });
  }
  return findings;
}
