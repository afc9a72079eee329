import type { SessionDocument } from '../document';

/**
 * The document with one change carried over to it: what differs between `from` and `to` becomes as
 * it is in `to`, and what has changed besides stays. Takes and noise readings are told apart by
 * their ids. With `from` itself in hand it gives `to` itself.
 */
export function carryChange(
  present: SessionDocument,
  from: SessionDocument,
  to: SessionDocument,
): SessionDocument {
  return carry(present, from, to, 2) as SessionDocument;
}

/** Deeper than `depth` a value is taken whole: half of one and half of another would be neither. */
function carry(present: unknown, from: unknown, to: unknown, depth: number): unknown {
  if (Object.is(from, to)) return present;
  if (Object.is(present, from) || depth === 0) return to;
  if (isList(present) && isList(from) && isList(to)) return carryList(present, from, to);
  if (!isFields(present) || !isFields(from) || !isFields(to)) return to;
  const carried: Record<string, unknown> = {};
  for (const key of new Set([...Object.keys(present), ...Object.keys(to)])) {
    const value = carry(present[key], from[key], to[key], depth - 1);
    if (value !== undefined) carried[key] = value;
  }
  return carried;
}

function carryList(present: List, from: List, to: List): List {
  const was = new Map(from.map((one) => [one.id, one]));
  const now = new Map(present.map((one) => [one.id, one]));
  const wanted = new Set(to.map(({ id }) => id));
  const carried = to.map((one) => (was.get(one.id) === one ? (now.get(one.id) ?? one) : one));
  const besides = present.filter(({ id }) => !was.has(id) && !wanted.has(id));
  return [...carried, ...besides];
}

type List = readonly { readonly id: string }[];

function isList(value: unknown): value is List {
  return (
    Array.isArray(value) && value.every((one) => isFields(one) && typeof one['id'] === 'string')
  );
}

function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
