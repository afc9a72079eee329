import { describe, expect, it } from 'vitest';
import { LateController } from '../../../components/late/late-controller';
import { late } from '../../../src/late';

type Room = 'hall' | 'attic' | 'cellar';

/** A house whose attic and cellar come when they are told to; counts how often it is drawn. */
function house() {
  const waiting: Record<'attic' | 'cellar', (() => void)[]> = { attic: [], cellar: [] };
  let fails = false;
  let drawn = 0;
  const room = (name: 'attic' | 'cellar') =>
    late(
      () =>
        new Promise<object>((resolve, reject) =>
          waiting[name].push(() => (fails ? reject(new TypeError('no stairs')) : resolve({}))),
        ),
    );
  const host = { requestUpdate: () => void (drawn += 1) };
  const rooms = new LateController<Room>(host, { attic: room('attic'), cellar: room('cellar') });
  const settle = async (name: 'attic' | 'cellar', failing: boolean): Promise<void> => {
    fails = failing;
    waiting[name].splice(0).forEach((go) => go());
    await new Promise((resolve) => setTimeout(resolve));
  };
  return {
    rooms,
    drawn: () => drawn,
    arrives: (name: 'attic' | 'cellar') => settle(name, false),
    fails: (name: 'attic' | 'cellar') => settle(name, true),
  };
}

describe('what is shown while something is on its way', () => {
  it('is what was shown before', async () => {
    const { rooms, arrives, drawn } = house();
    expect(rooms.show('hall')).toEqual({ here: 'hall', there: true, trouble: null });
    expect(rooms.show('attic')).toEqual({ here: 'hall', there: true, trouble: null });
    expect(rooms.show('attic').here).toBe('hall');
    expect(drawn()).toBe(0);
    await arrives('attic');
    expect(drawn()).toBe(1);
    expect(rooms.show('attic')).toEqual({ here: 'attic', there: true, trouble: null });
  });

  it('is nothing at first', () => {
    expect(house().rooms.show('attic')).toEqual({ here: 'attic', there: false, trouble: null });
  });

  it('is what was asked for last, whatever arrives before', async () => {
    const { rooms, arrives } = house();
    rooms.show('hall');
    rooms.show('attic');
    rooms.show('cellar');
    await arrives('attic');
    expect(rooms.show('cellar').here).toBe('hall');
    await arrives('cellar');
    expect(rooms.show('cellar').here).toBe('cellar');
  });
});

describe('what did not come', () => {
  it('is said until a new try brings it', async () => {
    const { rooms, arrives, fails } = house();
    rooms.show('hall');
    rooms.show('attic');
    await fails('attic');
    const view = rooms.show('attic');
    expect(view).toMatchObject({ here: 'attic', there: false });
    expect(view.trouble?.sentence).toContain('no stairs');
    rooms.again();
    expect(rooms.show('attic').trouble).not.toBeNull();
    await fails('attic');
    expect(rooms.show('attic').trouble).not.toBeNull();
    rooms.again();
    await arrives('attic');
    expect(rooms.show('attic')).toEqual({ here: 'attic', there: true, trouble: null });
  });

  it('is tried anew when it is asked for after something else', async () => {
    const { rooms, arrives, fails } = house();
    rooms.show('hall');
    rooms.show('attic');
    await fails('attic');
    rooms.show('attic');
    expect(rooms.show('hall')).toEqual({ here: 'hall', there: true, trouble: null });
    expect(rooms.show('attic')).toEqual({ here: 'hall', there: true, trouble: null });
    await arrives('attic');
    expect(rooms.show('attic').there).toBe(true);
  });

  it('says nothing once something else is asked for', async () => {
    const { rooms, fails } = house();
    rooms.show('hall');
    rooms.show('attic');
    rooms.show('hall');
    await fails('attic');
    expect(rooms.show('hall')).toEqual({ here: 'hall', there: true, trouble: null });
  });
});
