/** Whether two plain values are alike, whatever the order of fields; a field of undefined is none. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (!isPlain(one) || !isPlain(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  if (Array.isArray(one) && Object.keys(one).length !== Object.keys(other).length) return false;
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].every((key) => sameValue(one[key], other[key]));
}

function isPlain(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
