import { msg, str } from '@lit/localize';
import { startSentence } from './phrases';

/** What to do about a main that reads inverted; `likeMost`: as most speakers of the take do. */
export function sayInverted(name: string, likeMost: boolean): string {
  if (likeMost) {
    return msg(
      str`${startSentence(name)} reads inverted, as most speakers do: rather than all of them, the microphone or its input may turn the polarity over. Swap no wires before that is settled.`,
    );
  }
  return msg(
    str`${startSentence(name)} pushes where the others pull: with the amplifier off, swap its two wires at one end. The sums take that as done.`,
  );
}
