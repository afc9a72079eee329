import { describe, expect, it } from 'vitest';
import { late, withLate } from '../../src/late';
import { isTrouble } from '../../src/trouble';

const part = { answer: 42 };

/** A part that comes when `arrives` or `fails` is called; counts how often it was fetched. */
function held() {
  const waiting: { resolve: (value: typeof part) => void; reject: (error: Error) => void }[] = [];
  const one = late(
    () => new Promise<typeof part>((resolve, reject) => waiting.push({ resolve, reject })),
  );
  return {
    one,
    fetched: () => waiting.length,
    arrives: () => waiting.at(-1)?.resolve(part),
    fails: () => waiting.at(-1)?.reject(new TypeError('no network')),
  };
}

describe('late', () => {
  it('is fetched once, however often it is asked for', async () => {
    const { one, fetched, arrives } = held();
    expect(one.now).toBeNull();
    const asked = [one.load(), one.load()];
    arrives();
    expect(await Promise.all(asked)).toEqual([part, part]);
    expect(await one.load()).toBe(part);
    expect(one.now).toBe(part);
    expect(fetched()).toBe(1);
  });

  it('says why it did not come, and comes when it is asked for again', async () => {
    const { one, fetched, arrives, fails } = held();
    const first = one.load();
    fails();
    const answer = await first;
    expect(isTrouble(answer) && answer.sentence).toContain('did not load (no network)');
    expect(one.now).toBeNull();
    const second = one.load();
    arrives();
    expect(await second).toBe(part);
    expect(fetched()).toBe(2);
  });
});

describe('withLate', () => {
  it('works at once with what is there', async () => {
    const { one, arrives } = held();
    const loading = one.load();
    arrives();
    await loading;
    let worked = false;
    const work = withLate(one, ({ answer }) => {
      worked = true;
      return Promise.resolve(answer + 1);
    });
    expect(worked).toBe(true);
    expect(await work).toBe(43);
  });

  it('waits for what is not, and does nothing with what does not come', async () => {
    const { one, arrives, fails } = held();
    let worked = 0;
    const work = (): Promise<string> => {
      worked += 1;
      return Promise.resolve('done');
    };
    const failing = withLate(one, work);
    fails();
    expect(isTrouble(await failing)).toBe(true);
    expect(worked).toBe(0);
    const coming = withLate(one, work);
    arrives();
    expect(await coming).toBe('done');
    expect(worked).toBe(1);
  });
});
