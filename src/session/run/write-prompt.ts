import type { ChannelLabel } from '../../system/channel';
import type { Prompt } from '../bench';
import type { PlugWork } from './plug-board';

/** What the tuner has to do before a part, in sentences; outputs are counted from 1 there. */
export function writePrompt(work: PlugWork): Prompt {
  const { moves, look, switchOff, switchOn } = work;
  const plugs = moves.length + look.length > 0;
  const steps = [
    ...(plugs ? ['Switch the amplifiers off before you touch a plug.'] : []),
    ...moves.map(({ output, from, to }) =>
      from === null
        ? `Plug ${to} into output ${output + 1}.`
        : `Move the plug on output ${output + 1} from ${from} to ${to}.`,
    ),
    ...look.map(({ output, speaker }) => `See that output ${output + 1} feeds ${speaker}.`),
    ...(plugs ? ['Switch the amplifiers on again.'] : []),
    ...switchOff.map((speaker) => `Switch ${speaker} off: it shares its output.`),
    ...switchOn.map((speaker) => `Switch ${speaker} on.`),
    'Then go on.',
  ];
  return { title: titleOf(work), steps };
}

function titleOf({ moves, look, switchOff, switchOn }: PlugWork): string {
  if (moves.length > 0) {
    return `Before the next part: move ${moves.length === 1 ? 'one plug' : `${moves.length} plugs`}`;
  }
  if (look.length > 0) return 'Before the next part: look at the plugs';
  const changes = [says('off', switchOff), says('on', switchOn)].filter(Boolean);
  return `Before the next part: switch ${changes.join(', ')}`;
}

function says(state: 'on' | 'off', speakers: readonly ChannelLabel[]): string {
  return speakers.length === 0 ? '' : `${speakers.join(' and ')} ${state}`;
}
