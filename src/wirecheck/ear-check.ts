import type { ChannelLabel } from '../system/channel';
import { describeExchange } from './describe-exchange';
import type { WiringFinding } from './wiring-finding';

/** What the tuner heard while one channel played. */
export type EarAnswer =
  | { readonly kind: 'here' }
  | { readonly kind: 'elsewhere'; readonly speaker: ChannelLabel }
  | { readonly kind: 'silent' };

/** Answers so far; a channel without one is still to be played. */
export type EarAnswers = Readonly<Partial<Record<ChannelLabel, EarAnswer>>>;

export interface EarConclusion {
  /** Channels without an answer, in the order to play them. */
  readonly open: readonly ChannelLabel[];
  /** What the answers say so far. */
  readonly findings: readonly WiringFinding[];
  /** Every channel was heard from its own speaker. */
  readonly proven: boolean;
  /** Channels to play again once the findings are put right. */
  readonly retest: readonly ChannelLabel[];
}

/** What the answers of an ear check come to; `channels` in wiring order. */
export function concludeEarCheck(
  channels: readonly ChannelLabel[],
  answers: EarAnswers,
): EarConclusion {
  const open = channels.filter((channel) => answers[channel] === undefined);
  const heard = channels.flatMap((channel) => {
    const answer = answers[channel];
    if (answer?.kind === 'here') return [{ channel, speaker: channel }];
    return answer?.kind === 'elsewhere' ? [{ channel, speaker: answer.speaker }] : [];
  });
  const silent = channels.filter((channel) => answers[channel]?.kind === 'silent');
  const shared = channels.flatMap((speaker) => {
    const from = heard.filter((one) => one.speaker === speaker);
    return from.length > 1 ? [{ speaker, channels: from.map(({ channel }) => channel) }] : [];
  });
  const findings: WiringFinding[] = [
    ...describeExchange(heard),
    ...shared.map((one) => ({ kind: 'shared speaker', ...one }) as const),
    ...silent.map((channel) => ({ kind: 'silent', channel }) as const),
  ];
  const right = (channel: ChannelLabel): boolean => answers[channel]?.kind === 'here';
  return {
    open,
    findings,
    proven: channels.every(right),
    retest: channels.filter((channel) => answers[channel] !== undefined && !right(channel)),
  };
}

/** The answers without those of some channels, which are then played again. */
export function forgetAnswers(answers: EarAnswers, channels: readonly ChannelLabel[]): EarAnswers {
  return Object.fromEntries(
    Object.entries(answers).filter(([channel]) => !channels.some((one) => one === channel)),
  );
}
