import { numberText } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { listInWords } from '../system/list-in-words';
import type { DbCurve } from '../../dsp/response/curve';

/** More ranges than this are told as one. */
const mostRanges = 3;

/**
 * What is said of the ranges in which a curve tells nothing for noise, and what would settle it; null
 * when it tells all.
 */
export function noiseNote({ hz, db }: DbCurve): string | null {
  const ranges: [number, number][] = [];
  for (const [k, value] of db.entries()) {
    const at = hz[k] ?? 0;
    if (value !== null) continue;
    const last = ranges.at(-1);
    if (last && k > 0 && db[k - 1] === null) last[1] = at;
    else ranges.push([at, at]);
  }
  const [first, last] = [ranges[0], ranges.at(-1)];
  if (!first || !last) return null;
  const where =
    ranges.length <= mostRanges
      ? listInWords(ranges.map(rangeText))
      : msg(str`in ${ranges.length} ranges between ${hertz(first[0])} and ${hertz(last[1])} Hz`);
  return msg(
    str`No response ${where}: the noise is as strong as the speaker there. More level would settle it.`,
  );
}

function rangeText([from, to]: readonly [number, number]): string {
  return from === to
    ? msg(str`at ${hertz(from)} Hz`)
    : msg(str`from ${hertz(from)} to ${hertz(to)} Hz`);
}

function hertz(hz: number): string {
  return numberText(hz, hz < 100 ? 1 : 0);
}
