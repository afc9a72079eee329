import { msg, str } from '@lit/localize';
import { groupWord } from '../system/group-word';
import type { GroupId } from '../system/channel';
import type { Abilities } from './abilities';
import type { ChannelMeasurement } from './channel-measurement';
import { sayHz, sayList } from './phrases';
import type { FullRangeAdvice } from './proposal';
import { sayRolloff } from './propose-crossover';
import { groundsOf, type Reason } from './reason';
import { f6Of, worstRolloff } from './without-subs';

/** A speaker that reaches down to here leaves little to a sub (common practice, no source). */
const deepHz = 30;

const plain = (sentence: string): Reason => ({ sentence, grounds: [] });

/**
 * Whether a group can do without a crossover and what that changes. `fullNow`: groups that run full
 * range by the settings in force.
 */
export function adviseFullRange(
  group: GroupId,
  members: readonly ChannelMeasurement[],
  subs: readonly ChannelMeasurement[],
  { fullRange }: Abilities,
  fullNow: readonly GroupId[],
): FullRangeAdvice {
  const option = fullRange?.find((one) => one.group === group) ?? null;
  const missing = fullRange !== null && option === null;
  if (subs.length === 0) return forced(group, missing);
  if (missing) {
    return {
      kind: 'not offered',
      reasons: [plain(msg('The processor never lets this group run full range.'))],
    };
  }
  const locks = (fullRange ?? []).filter(({ unlocks }) => unlocks.includes(group));
  if (locks.length > 0 && !locks.some((one) => fullNow.includes(one.group))) {
    const who = sayList(locks.map((one) => msg(str`the ${groupWord(one.group)}`)));
    return {
      kind: 'locked',
      reasons: [plain(msg(str`It can run full range only once ${who} run full range.`))],
    };
  }
  const worst = worstRolloff(members);
  const changes = [...whatChanges(group), ...unlocked(option?.unlocks ?? [])];
  if (!worst || members.some(({ reading }) => !reading?.rolloff)) {
    return {
      kind: 'cannot tell',
      reasons: [plain(msg('How low every speaker of it reaches is not known.')), ...changes],
    };
  }
  const sub = worstRolloff(subs);
  const enoughHz = Math.max(deepHz, sub ? f6Of(sub) : 0);
  const deep = (worst.reading?.rolloff?.f6UpperHz ?? Infinity) <= enoughHz;
  const reaches = sayRolloff(worst, [worst]);
  const compared: Reason = {
    sentence: deep
      ? msg(str`That is as low as is needed (${sayHz(enoughHz)}).`)
      : msg(
          str`Below that its bass would be lost: its −6 dB point would have to lie surely at ${sayHz(enoughHz)} or lower.`,
        ),
    grounds: sub ? groundsOf([sub.channel.label], 'rolloff') : [],
  };
  return { kind: deep ? 'possible' : 'too small', reasons: [reaches, compared, ...changes] };
}

function forced(group: GroupId, missing: boolean): FullRangeAdvice {
  const all = msg('Without a sub nobody takes its bass');
  return {
    kind: 'forced',
    reasons: [
      plain(
        group === 'fronts'
          ? msg(
              str`${all}: the fronts play all they can, LFE and the bass of groups with a crossover too.`,
            )
          : msg(str`${all} but the fronts.`),
      ),
      ...(missing && group === 'fronts'
        ? [plain(msg("The processor's sheet offers the fronts no full range: their bass is lost."))]
        : []),
    ],
  };
}

function whatChanges(group: GroupId): Reason[] {
  return [
    plain(
      group === 'fronts'
        ? msg(
            'Full range, the fronts keep all their bass, and two-channel music leaves the subs silent unless the processor copies bass to them.',
          )
        : msg('Full range, it keeps all its bass, and the subs play only that of others and LFE.'),
    ),
  ];
}

function unlocked(groups: readonly GroupId[]): Reason[] {
  return groups.length === 0
    ? []
    : [plain(msg(str`Only then can the ${sayList(groups.map(groupWord))} run full range too.`))];
}
