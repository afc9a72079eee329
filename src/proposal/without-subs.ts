import { msg, str } from '@lit/localize';
import type { Abilities } from './abilities';
import { sayMissing, type ChannelMeasurement } from './channel-measurement';
import { judgeGroup, type GroupCase } from './group-case';
import { sayHz, startSentence } from './phrases';
import { readFrom, sayRolloff, type CrossoverProposal } from './propose-crossover';
import { groundsOf, sayReasons, type Reason } from './reason';

/**
 * A group in a layout without subs. Fronts play all they can; another group hands its bass to them
 * where they reach lower than it does, at the measured step, and else plays its own.
 */
export function proposeWithoutSubs(
  group: GroupCase['group'],
  members: readonly ChannelMeasurement[],
  fronts: readonly ChannelMeasurement[],
  abilities: Abilities,
  stepsHz: readonly number[],
): CrossoverProposal {
  const channels = members.map(({ channel }) => channel.label);
  const judged =
    group === 'fronts' || stepsHz.length === 0
      ? null
      : judgeGroup({ group, members, stepsHz, abilities, sub: null, atSeats: () => null });
  const lowest = worstRolloff(members);
  const front = worstRolloff(fronts);
  const [best] = judged?.candidates ?? [];
  const hands =
    lowest !== null &&
    front !== null &&
    f6Of(front) < f6Of(lowest) &&
    best?.breaks.length === 0 &&
    Boolean(judged?.decidedBy);
  const crossoverHz = hands && best ? best.stepHz : null;
  const reasons: Reason[] = [
    ...(group === 'fronts' || crossoverHz === null ? [noSub] : []),
    ...(lowest ? [sayRolloff(lowest, members)] : []),
    crossoverHz !== null && front
      ? {
          sentence: startSentence(
            msg(
              str`the fronts reach down to ${sayHz(f6Of(front))} and carry this group's bass below ${sayHz(crossoverHz)}.`,
            ),
          ),
          grounds: groundsOf([front.channel.label], 'rolloff'),
        }
      : { sentence: msg('What lies below is lost.'), grounds: [] },
  ];
  const shown = crossoverHz === null ? reasons.filter((_, i) => lowest || i === 0) : reasons;
  return {
    group,
    channels,
    crossoverHz,
    nearestHz: null,
    practiceHz: judged && crossoverHz !== null ? judged.practiceHz : null,
    measuredHz: judged && crossoverHz !== null ? judged.measuredHz : null,
    decidedBy: lowest?.channel.label ?? null,
    decidedByReading: lowest ? 'roll-off' : null,
    ...readFrom(lowest),
    reason: sayReasons(shown),
    reasons: shown,
    warnings: members
      .filter(({ reading }) => !reading?.rolloff)
      .map((member) => sayMissing(member, 'roll-off')),
    alternatives: crossoverHz === null ? [] : (judged?.alternatives ?? []),
  };
}

const noSub: Reason = {
  get sentence() {
    return msg('The layout has no sub to hand bass to, so this group runs full range.');
  },
  grounds: [],
};

/** The speaker that reaches least deep; null when nothing is known of any. */
export function worstRolloff(members: readonly ChannelMeasurement[]): ChannelMeasurement | null {
  return members.reduce<ChannelMeasurement | null>(
    (worst, member) =>
      member.reading?.rolloff && (worst === null || f6Of(member) > f6Of(worst)) ? member : worst,
    null,
  );
}

/** Median f6 of a speaker whose roll-off is known, Hz. */
export function f6Of({ reading }: ChannelMeasurement): number {
  return reading?.rolloff?.f6Hz.median ?? 0;
}
