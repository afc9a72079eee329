import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { WiringFinding } from './wiring-finding';
import { listInWords } from '../system/list-in-words';

/** What to do about one finding: what is wrong, then the steps that put it right. */
export interface WiringAdvice {
  readonly finding: WiringFinding;
  readonly sentence: string;
  readonly steps: readonly string[];
}

const off = () => msg('Switch the amplifiers off.');

/**
 * A finding in words, and what to move where. `outputOf` names the processor's output of a channel,
 * such as "Back left"; null when no processor sheet is known. Common practice.
 */
export function adviseRewiring(
  finding: WiringFinding,
  outputOf: (channel: ChannelLabel) => string | null = () => null,
): WiringAdvice {
  const plug = (channel: ChannelLabel): string => {
    const output = outputOf(channel);
    return output === null ? channel : `${channel} (${output})`;
  };
  return { finding, ...wordsFor(finding, plug) };
}

function wordsFor(
  finding: WiringFinding,
  plug: (channel: ChannelLabel) => string,
): Omit<WiringAdvice, 'finding'> {
  switch (finding.kind) {
    case 'exchanged':
      return exchanged(finding.channels, plug);
    case 'elsewhere':
      return {
        sentence: msg(str`Channel ${finding.channel} sounds from the ${finding.from} speaker.`),
        steps: [
          off(),
          msg(
            str`Follow the cable of the ${finding.from} speaker back to its plug and move that plug to the output of ${plug(finding.from)}.`,
          ),
          msg(
            str`Put the ${finding.channel} speaker's plug on the output of ${plug(finding.channel)}.`,
          ),
        ],
      };
    case 'silent':
      return {
        sentence: msg(str`Channel ${finding.channel} is silent.`),
        steps: [
          msg(
            str`Check that the amplifier of ${finding.channel} is on, and that the channel is not muted or set to “none” in the processor.`,
          ),
          msg(
            str`${off()} Exchange the plug of ${plug(finding.channel)} with one that works. If the sound stays away at the other speaker, the output is dead; if it stays away here, the fault lies behind the plug: amplifier, cable or speaker.`,
          ),
        ],
      };
    case 'doubled':
      return {
        sentence: msg(
          str`Channel ${finding.channel} sounds from ${listInWords(finding.from)} together.`,
        ),
        steps: [
          off(),
          msg(
            str`Look for a splitter or a doubled cable behind ${plug(finding.channel)}, and give each of ${listInWords(finding.from)} a plug of its own.`,
          ),
        ],
      };
    case 'shared speaker':
      return {
        sentence: msg(
          str`Channels ${listInWords(finding.channels)} all sound from the ${finding.speaker} speaker.`,
        ),
        steps: [
          msg(
            `Check that no downmix is on in the processor and that every speaker is declared there. Then play each channel again and listen which of them is right.`,
          ),
        ],
      };
    case 'mute speaker':
      return {
        sentence: msg(str`No channel sounds from the ${finding.speaker} speaker.`),
        steps: [
          msg(
            `Check its amplifier and its cable at both ends, with the amplifier off, then walk past it again.`,
          ),
        ],
      };
    case 'inverted':
      return {
        sentence: msg(str`The ${finding.speaker} speaker plays inverted.`),
        steps: [
          msg(
            str`${off()} Exchange plus and minus at one end of its cable, at the amplifier or at the speaker, not at both.`,
          ),
        ],
      };
    case 'suspect':
      return {
        sentence:
          finding.channels.length === 1
            ? msg(
                str`Channel ${finding.channels.join()} does not sound as it should from the seat.`,
              )
            : msg(
                str`From the seat ${listInWords(finding.channels)} arrive as if they were in each other's places.`,
              ),
        steps: [
          msg(
            str`Walk past ${listInWords(finding.channels)} with the microphone, or play them by ear, before any plug is moved: a wrong distance would look the same.`,
          ),
        ],
      };
    case 'cannot tell':
      return {
        sentence: msg(
          str`Which of the speakers ${listInWords(finding.channels)} plays which channel cannot be told.`,
        ),
        steps: [
          msg(
            `Hold the microphone nearer to each of them, within a hand's width, and take those stops again.`,
          ),
        ],
      };
  }
}

function exchanged(
  channels: readonly ChannelLabel[],
  plug: (channel: ChannelLabel) => string,
): Omit<WiringAdvice, 'finding'> {
  const [one, other] = channels;
  if (channels.length === 2 && one && other) {
    return {
      sentence: msg(str`Channels ${one} and ${other} are exchanged.`),
      steps: [
        off(),
        msg(
          str`Exchange the two plugs at the outputs of ${plug(one)} and ${plug(other)}, or the two speaker cables at the amplifier: one of the two, not both.`,
        ),
      ],
    };
  }
  // Channel i sounds from speaker i + 1, so the plug that sits on i belongs on i + 1.
  const moves = channels.map((channel, at) => {
    const next = channels[(at + 1) % channels.length] ?? channel;
    return msg(str`the plug on ${plug(channel)} to ${plug(next)}`);
  });
  return {
    sentence: msg(
      str`Channels ${listInWords(channels)} went round: each sounds from the speaker of the next, and ${channels.at(-1)} from ${one}'s.`,
    ),
    steps: [off(), msg(str`Move at the processor's outputs: ${moves.join('; ')}.`)],
  };
}
