/** 32-bit FNV-1a hash of a text (Fowler, Noll, Vo; draft-eastlake-fnv). */
export function hashText(text: string, basis = 0x811c9dc5): number {
  let hash = basis;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Hash of everything in a schedule but its id: 16 hexadecimal digits, same take, same id. */
export function scheduleId(schedule: object): string {
  const text = canonicalJson({ ...schedule, id: undefined });
  const halves = [hashText(text), hashText(text, 0x9747b28c)];
  return halves.map((half) => half.toString(16).padStart(8, '0')).join('');
}

/** JSON with the keys of every object sorted, so that equal values give equal text. */
function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) =>
    typeof inner === 'object' && inner !== null && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}
