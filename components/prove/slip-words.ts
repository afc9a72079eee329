import { msg, str } from '@lit/localize';
import type { ProofLine, Slip } from '../../src/proof/proof';
import { sayList, startSentence } from '../../src/proposal/phrases';
import type { Layout } from '../../src/system/channel';
import { groupName } from '../propose/group-words';

/** More speakers than these are counted, not named. */
const mostNamed = 4;

const words: Readonly<Record<Slip, (names: string) => string>> = {
  'wrong side': (names) => msg(str`distances seem to be typed for the wrong side: ${names}`),
  'feet for metres': (names) =>
    msg(str`distances seem to be counted in another unit than they were typed in: ${names}`),
  'wrong sign': (names) => msg(str`trims seem to be typed with the wrong sign: ${names}`),
  'left on full range': (names) => msg(str`a crossover seems to be left on full range: ${names}`),
  'another crossover': (names) =>
    msg(str`another crossover than the proposed one is set: ${names}`),
  'own low-pass on': (names) => msg(str`a sub’s own low-pass seems to be still on: ${names}`),
  'equaliser or dynamics on': (names) =>
    msg(str`an equaliser or dynamics seem to be still active: ${names}`),
  inverted: (names) => msg(str`the polarity is turned over: ${names}`),
  'LFE level': (names) => msg(str`the LFE channel is not replayed at its level: ${names}`),
  'upmixing on': (names) =>
    msg(str`upmixing seems to be on: other speakers play along with ${names}`),
  'wrong wiring': (names) => msg(str`plugs seem to be on the wrong outputs: ${names}`),
};

/** The mistakes that explain failed lines, one sentence each, those of most lines first. */
export function slipSentences(lines: readonly ProofLine[], layout: Layout): string[] {
  const found = new Map<Slip, Set<string>>();
  const counts = new Map<Slip, number>();
  for (const { slip, changes } of lines) {
    if (slip === null) continue;
    const names = found.get(slip) ?? new Set<string>();
    for (const { channels, group } of changes) {
      for (const label of channels) names.add(label);
      if (group !== null) names.add(groupName(group, layout));
    }
    found.set(slip, names);
    counts.set(slip, (counts.get(slip) ?? 0) + 1);
  }
  return [...found]
    .sort(([a], [b]) => (counts.get(b) ?? 0) - (counts.get(a) ?? 0))
    .map(([slip, names]) => `${startSentence(words[slip](sayNames([...names])))}.`);
}

/** A few by name, many by their number. */
export function sayNames(names: readonly string[]): string {
  return names.length > mostNamed ? msg(str`${names.length} speakers`) : sayList(names);
}
