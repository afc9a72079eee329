import { msg, str } from '@lit/localize';
import type { EarAnswer, EarAnswers } from '../../../src/wirecheck/ear-check';
import type { ChannelLabel } from '../../../src/system/channel';
import type { PlanMark } from '../../plan/plan-mark';

/** The mark of a speaker; null while nothing was heard of it. */
export function earMark(label: ChannelLabel, answers: EarAnswers): PlanMark | null {
  const answer = answers[label];
  const strangers = Object.entries(answers).flatMap(([channel, one]) =>
    one.kind === 'elsewhere' && one.speaker === label ? [channel] : [],
  );
  const words = [
    ...(answer ? [answerInWords(answer)] : []),
    ...(strangers.length > 0 ? [msg(str`plays ${strangers.join(', ')}`)] : []),
  ];
  if (words.length === 0) return null;
  return { right: answer?.kind === 'here' && strangers.length === 0, words: words.join('; ') };
}

function answerInWords(answer: EarAnswer): string {
  switch (answer.kind) {
    case 'here':
      return msg('heard here');
    case 'elsewhere':
      return msg(str`heard from ${answer.speaker}`);
    case 'silent':
      return 'silent';
  }
}

/** Numbers, counted from 1, that what was typed so far may still become. */
export function numbersFrom(typed: string, count: number): number[] {
  return Array.from({ length: count }, (_, index) => index + 1).filter((number) =>
    String(number).startsWith(typed),
  );
}
