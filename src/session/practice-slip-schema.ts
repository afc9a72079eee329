import * as v from 'valibot';
import type { PracticeSlip } from '../rig/practice-slips';
import { channelLabel, finite, groupId, positive } from '../schema/schema-parts';

const channels = v.array(channelLabel);

/** Something typed or left wrong on purpose in the practice room. */
export const practiceSlip = v.variant('kind', [
  v.object({ kind: v.literal('wrong side'), channels }),
  v.object({ kind: v.literal('wrong unit'), taken: v.picklist(['feet', 'metres']), channels }),
  v.object({ kind: v.literal('wrong sign'), channels }),
  v.object({ kind: v.literal('full range'), group: groupId }),
  v.object({
    kind: v.literal('own low-pass'),
    channels,
    hz: positive,
    order: v.pipe(finite, v.integer(), v.minValue(1), v.maxValue(8)),
  }),
  v.object({ kind: v.literal('inverted'), channels }),
  v.object({ kind: v.literal('equaliser'), channels, gainDb: finite }),
  v.object({
    kind: v.literal('dynamics'),
    thresholdDb: finite,
    share: v.pipe(finite, v.minValue(0), v.maxValue(1)),
  }),
  v.object({ kind: v.literal('LFE level'), offDb: finite }),
  v.object({ kind: v.literal('upmixing'), to: channelLabel, gainDb: finite }),
]) satisfies v.GenericSchema<unknown, PracticeSlip>;
