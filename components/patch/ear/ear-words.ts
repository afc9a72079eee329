import type { EarAnswer, EarAnswers } from '../../../src/wirecheck/ear-check';
import type { ChannelLabel } from '../../../src/system/channel';

/** What was heard of a channel, in a few words; null while it was not answered. */
export function answerInWords(answer: EarAnswer | undefined): string | null {
  switch (answer?.kind) {
    case undefined:
      return null;
    case 'here':
      return 'heard here';
    case 'elsewhere':
      return `heard from ${answer.speaker}`;
    case 'silent':
      return 'silent';
  }
}

/** Channels that were heard from a speaker although they are not its own. */
export function strangersAt(speaker: ChannelLabel, answers: EarAnswers): string[] {
  return Object.entries(answers).flatMap(([channel, answer]) =>
    answer.kind === 'elsewhere' && answer.speaker === speaker ? [channel] : [],
  );
}

/** "1.", "12": which speakers a number typed so far may still mean, counted from 1. */
export function numbersFrom(typed: string, count: number): number[] {
  return Array.from({ length: count }, (_, index) => index + 1).filter((number) =>
    String(number).startsWith(typed),
  );
}
