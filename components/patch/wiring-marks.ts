import { localeInForce } from '../../src/locale/locale-in-force';
import type { BenchState } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import type { PlanMark } from '../plan/plan-mark';
import { earMark } from './ear/ear-words';
import { walkMark, walkResult } from './walk/walk-words';

type Marks = ReadonlyMap<ChannelLabel, PlanMark>;

let newest: { readonly key: readonly unknown[]; readonly marks: Marks } | null = null;

/**
 * What ear and microphone found of the wiring, speaker by speaker; what is wrong counts first. The
 * same marks until answers, walk or plan change: the plan is not drawn anew for each level heard.
 */
export function wiringMarks({ document, layout }: BenchState): Marks {
  const { earAnswers, walk, system } = document;
  const key = [localeInForce(), earAnswers, walk, system, layout];
  if (newest?.key.every((value, index) => value === key[index])) return newest.marks;
  const result = walk.length === 0 ? null : walkResult(walk, layout, system);
  const marks = new Map<ChannelLabel, PlanMark>();
  for (const { label } of layout.channels) {
    const ear = earMark(label, earAnswers);
    const visited = walk.some(({ speaker }) => speaker === label);
    const walked = result && visited ? walkMark(label, result) : null;
    const mark = [walked, ear].find((one) => one?.right === false) ?? walked ?? ear;
    if (mark) marks.set(label, mark);
  }
  newest = { key, marks };
  return marks;
}
