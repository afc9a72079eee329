import { msg, str } from '@lit/localize';
import { listInWords } from '../../system/list-in-words';
import type { ChannelLabel } from '../../system/channel';
import type { Prompt } from '../bench';
import type { PlugWork } from './plug-board';

/** What the tuner has to do before a part, in sentences; outputs are counted from 1 there. */
export function writePrompt(work: PlugWork): Prompt {
  const { moves, look, switchOff, switchOn } = work;
  const plugs = moves.length + look.length > 0;
  const steps = [
    ...(plugs ? [msg('Switch the amplifiers off before you touch a plug.')] : []),
    ...moves.map(({ output, from, to }) =>
      from === null
        ? msg(str`Plug ${to} into output ${output + 1}.`)
        : msg(str`Move the plug on output ${output + 1} from ${from} to ${to}.`),
    ),
    ...look.map(({ output, speaker }) => msg(str`See that output ${output + 1} feeds ${speaker}.`)),
    ...(plugs ? [msg('Switch the amplifiers on again.')] : []),
    ...switchOff.map((speaker) => msg(str`Switch ${speaker} off: it shares its output.`)),
    ...switchOn.map((speaker) => msg(str`Switch ${speaker} on.`)),
    msg('Then go on.'),
  ];
  return { title: titleOf(work), steps };
}

function titleOf({ moves, look, switchOff, switchOn }: PlugWork): string {
  if (moves.length > 0) {
    return msg(
      str`Before the next part: move ${moves.length === 1 ? msg('one plug') : msg(str`${moves.length} plugs`)}`,
    );
  }
  if (look.length > 0) return msg('Before the next part: look at the plugs');
  const changes = [says('off', switchOff), says('on', switchOn)].filter(Boolean);
  return msg(str`Before the next part: switch ${changes.join(', ')}`);
}

function says(state: 'on' | 'off', speakers: readonly ChannelLabel[]): string {
  if (speakers.length === 0) return '';
  const all = listInWords(speakers);
  return state === 'on' ? msg(str`${all} on`) : msg(str`${all} off`);
}
