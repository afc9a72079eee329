import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepAlike } from '../../../../src/session/follow/keep-alike';

describe('what is kept of the value before', () => {
  const before = { takes: [{ id: 'a', at: [1, 2] }, { id: 'b' }], name: 'Attic', typed: {} };

  it('is all of it when nothing differs', () => {
    expect(keepAlike(before, structuredClone(before))).toBe(before);
  });

  it('is each part that is alike, whatever differs beside it', () => {
    const next = { ...structuredClone(before), name: 'Loft' };
    const kept = keepAlike(before, next);
    expect(kept).toEqual(next);
    expect(kept).not.toBe(before);
    expect(kept.takes).toBe(before.takes);
  });

  it('is what a longer list begins with', () => {
    const next = structuredClone(before);
    next.takes.push({ id: 'c' });
    const kept = keepAlike(before, next);
    expect(kept.takes[0]).toBe(before.takes[0]);
    expect(kept.takes.map(({ id }) => id)).toEqual(['a', 'b', 'c']);
  });

  it('is nothing that is gone', () => {
    expect(keepAlike<object>({ a: 1, b: 2 }, { a: 1 })).toEqual({ a: 1 });
    expect(keepAlike<object>({ a: undefined }, { b: 2 })).toEqual({ b: 2 });
    expect(keepAlike<object>({ a: undefined }, {})).toStrictEqual({});
    expect(keepAlike<object>([1, 2], [1])).toEqual([1]);
    expect(keepAlike<object>({ 0: 1 }, [1])).toEqual([1]);
  });

  it('never changes what the next value says', () => {
    const plain = fc.jsonValue({ maxDepth: 4 });
    fc.assert(
      fc.property(plain, plain, (one, other) => {
        expect(keepAlike(one, structuredClone(other))).toStrictEqual(other);
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
