import { describe, expect, it } from 'vitest';
import { createTakeEnding } from '../../../../src/rig/live/take-ending';
import { trouble } from '../../../../src/trouble';

const stopped = trouble('stopped', 'Stopped.');
const forever = new Promise<string>(() => undefined);

describe('createTakeEnding', () => {
  it('has closed everything, last opened first, before end returns', () => {
    const ending = createTakeEnding();
    const closed: string[] = [];
    ending.atEnd(() => closed.push('microphone'));
    ending.atEnd(() => closed.push('sound'));
    ending.end(stopped);
    expect(closed).toEqual(['sound', 'microphone']);
  });

  it('keeps the first reason and closes only once', () => {
    const ending = createTakeEnding();
    let closed = 0;
    ending.atEnd(() => closed++);
    ending.end(stopped);
    ending.end(trouble('hidden', 'Hidden.'));
    ending.finish();
    expect(ending.reason).toBe(stopped);
    expect(closed).toBe(1);
  });

  it('frees whoever waits when the take ends', async () => {
    const ending = createTakeEnding();
    const waiting = ending.until(forever);
    ending.end(stopped);
    expect(await waiting).toBeNull();
    expect(await ending.until(Promise.resolve('late'))).toBeNull();
  });

  it('hands over what was waited for while the take runs', async () => {
    const ending = createTakeEnding();
    expect(await ending.until(Promise.resolve('early'))).toBe('early');
    expect(ending.reason).toBeNull();
  });

  it('closes a microphone that opens only after the take was stopped', async () => {
    const ending = createTakeEnding();
    const closed: string[] = [];
    let open: (name: string) => void = () => undefined;
    const opening = new Promise<string>((resolve) => (open = resolve));
    const holding = ending.hold(opening, (name) => closed.push(name));
    ending.end(stopped);
    expect(await holding).toBeNull();
    open('microphone');
    await opening;
    await Promise.resolve();
    expect(closed).toEqual(['microphone']);
  });

  it('passes a trouble on and has nothing to close for it', async () => {
    const ending = createTakeEnding();
    const refused = trouble('no-permission', 'Refused.');
    let closed = 0;
    const held = await ending.hold<string>(Promise.resolve(refused), () => closed++);
    expect(held).toBe(refused);
    ending.finish();
    expect(closed).toBe(0);
  });
});
