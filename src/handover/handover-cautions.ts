import { msg, str } from '@lit/localize';
import type { ChannelProposal } from '../proposal/proposal';
import { sayInverted } from '../proposal/say-inverted';
import { isOldProof } from '../session/derive-proof';
import { channelName } from '../system/channel-names';
import type { HandedOver } from './handed-over';

/** What whoever finds this system must know, sentences, each once. */
export function handoverCautions(state: HandedOver): string[] {
  const { layout, proposal, proof, readings, document } = state;
  const simulated = document.rig === 'practice' || readings?.simulated === true;
  const all = [
    ...(simulated ? [msg('No real room was measured: all numbers come from a simulation.')] : []),
    ...(proposal ? [] : [msg('There are no settings: no take was read.')]),
    ...(proof ? [] : [msg('Nothing was proved: the settings were never measured as typed.')]),
    ...(isOldProof(state) ? [msg('The settings have changed since they were proved.')] : []),
    ...(readings && readings.layout !== layout.name
      ? [msg(str`What was read is of ${readings.layout}, the plan says ${layout.title}.`)]
      : []),
    ...(readings?.channels.flatMap(({ faults }) => faults.map(({ sentence }) => sentence)) ?? []),
    ...(proposal?.missing.map(({ sentence }) => sentence) ?? []),
    ...(proposal?.groups.flatMap(({ warnings }) => warnings) ?? []),
    ...(proposal?.channels.flatMap((channel) => stillWarned(channel, state)) ?? []),
    ...(proof?.notes ?? []),
  ];
  return [...new Set(all)];
}

/** The warnings of a channel, without the one to swap its wires once its polarity is proved. */
function stillWarned(
  { channel, warnings }: ChannelProposal,
  { proof }: HandedOver,
): readonly string[] {
  const isProved = proof?.lines.some(
    ({ claim, channels, verdict }) =>
      claim === 'polarity' && verdict === 'pass' && channels.includes(channel),
  );
  if (!isProved) return warnings;
  const name = channelName(channel);
  const swaps = [sayInverted(name, false), sayInverted(name, true)];
  return warnings.filter((one) => !swaps.includes(one));
}
