import type { Bench } from '../../../src/session/bench';
import type { DeclaredSettings } from '../../../src/system/declared-settings';

/** Changes what is declared to be in force, under a name that undo can show. */
export function changeInForce(
  bench: Bench | null,
  name: string,
  change: (inForce: DeclaredSettings) => DeclaredSettings,
): void {
  bench?.change(name, (document) => ({ ...document, inForce: change(document.inForce) }));
}

/** A record with a value at a key; undefined takes the key out. */
export function withEntry<Key extends string, Value>(
  record: Readonly<Partial<Record<Key, Value>>>,
  key: Key,
  value: Value | undefined,
): Readonly<Partial<Record<Key, Value>>> {
  const others = Object.entries(record).filter(([name]) => name !== key);
  const kept = Object.fromEntries(others) as Readonly<Partial<Record<Key, Value>>>;
  return value === undefined ? kept : { ...kept, [key]: value };
}
