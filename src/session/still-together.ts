import type { BassBands } from '../reading/reading';
import {
  firstBass,
  isSameOrder,
  type RolloffTogether,
  type TogetherOrder,
} from '../reading/rolloff-together';

/** Findings that were read in this page, by the first bass of their orders. */
const remembered = new WeakMap<BassBands, readonly RolloffTogether[]>();
/** Of one bass so many are kept: what was said of its model a while ago may be said again. */
const mostKept = 8;

/** Keeps a finding, so that coming back to its order needs no reading. */
export function rememberTogether(one: RolloffTogether): void {
  const bass = firstBass(one.order);
  if (!bass) return;
  remembered.set(bass, [one, ...(remembered.get(bass) ?? [])].slice(0, mostKept));
}

/** The findings of orders, as far as they are known; the very list when it is the same. */
export function stillTogether(
  known: readonly RolloffTogether[],
  orders: readonly TogetherOrder[],
): readonly RolloffTogether[] {
  const now = orders.flatMap((order) => {
    const bass = firstBass(order);
    const before = [...known, ...((bass && remembered.get(bass)) ?? [])];
    return before.find((one) => isSameOrder(one.order, order)) ?? [];
  });
  const same = now.length === known.length && now.every((one, index) => one === known[index]);
  return same ? known : now;
}

/** Orders of which there is no finding yet. */
export function unreadTogether(
  orders: readonly TogetherOrder[],
  known: readonly RolloffTogether[],
): TogetherOrder[] {
  return orders.filter((order) => !known.some((one) => isSameOrder(one.order, order)));
}
