/**
 * `next`, but with every part that is alike in `before` as the very value of there: what was worked
 * out from such a part is known to stand. Gives `before` itself when nothing differs.
 */
export function keepAlike<T>(before: T, next: T): T {
  return keep(before, next) as T;
}

function keep(before: unknown, next: unknown): unknown {
  if (Object.is(before, next)) return before;
  if (Array.isArray(before) && Array.isArray(next)) {
    const known: readonly unknown[] = before;
    const kept = next.map((one: unknown, index) => keep(known[index], one));
    const same = kept.length === known.length && kept.every((one, n) => Object.is(one, known[n]));
    return same ? before : kept;
  }
  if (!isFields(before) || !isFields(next)) return next;
  const kept: Record<string, unknown> = {};
  let same = Object.keys(before).length === Object.keys(next).length;
  for (const [key, value] of Object.entries(next)) {
    kept[key] = keep(before[key], value);
    same &&= key in before && Object.is(kept[key], before[key]);
  }
  return same ? before : kept;
}

/** Plain fields; arrays, arrays of numbers and the like are none. */
function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return (
    typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype
  );
}
