import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/plan/room-fields';
import '../../../components/plan/seat-list';
import { find, findAll, mount, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { PlanBench } from './plan-bench';

expectQuiet();

function field(root: Element, label: string, index = 0): HTMLInputElement {
  const number = findAll(root, `ll-number[label="${label}"]`)[index];
  if (!number) throw new RangeError(`no field ${label}`);
  return find<HTMLInputElement>(number, 'input');
}

async function type(root: HTMLElement, input: HTMLInputElement, text: string): Promise<void> {
  await userEvent.fill(input, text);
  await userEvent.keyboard('{Enter}');
  await settle(root);
}

async function press(root: HTMLElement, text: string): Promise<void> {
  const button = findAll(root, 'button').find((one) => textOf(one) === text);
  if (!button) throw new RangeError(`no button says ${text}`);
  await userEvent.click(button);
  await settle(root);
}

describe('the room', () => {
  it('is drawn in one go once it is typed, changed, and taken away', async () => {
    const bench = new PlanBench('5.1');
    const room = await mount('ll-room', { bench }, 360);
    await type(room, field(room, 'Length, front to back'), '6.2');
    await type(room, field(room, 'Seat from the front wall'), '4');
    expect(bench.calls).toEqual([]);
    await press(room, 'Draw the room');
    expect(bench.system.room).toMatchObject({ lengthMetres: 6.2, seatFromFrontMetres: 4 });
    await type(room, field(room, 'Width'), '3.9');
    await press(room, 'Draw it like this');
    expect(bench.system.room?.widthMetres).toBe(3.9);
    await press(room, 'Take the outline away');
    expect(bench.system.room).toBeNull();
    expect(bench.calls).toEqual(['Draw the room', 'Draw the room', 'Take the outline away']);
  });

  it.each([
    ['Length, front to back', '-4', 'The length of the room lies between 1 m and 60 m'],
    ['Height', '0.4', 'The height of the room lies between 1.5 m and 20 m'],
    ['Seat from the left wall', '4.5', 'between 0 and the room’s width of 4 m'],
    ['Ears above the floor', '0', 'The height of the ears'],
  ])('is refused with %s %s', async (label, text, sentence) => {
    const bench = new PlanBench('5.1');
    const before = bench.state.document;
    const room = await mount('ll-room', { bench }, 360);
    await type(room, field(room, label), text);
    await press(room, 'Draw the room');
    expect(textOf(find(room, '[role=alert]'))).toContain(sentence);
    expect(bench.state.document).toBe(before);
  });

  it('keeps what was typed while another stage is shown, session by session', async () => {
    const bench = new PlanBench('5.1');
    const room = await mount('ll-room', { bench }, 360);
    await type(room, field(room, 'Width'), '4.4');
    await type(room, field(room, 'Height'), '-2');
    room.remove();
    const again = await mount('ll-room', { bench }, 360);
    expect(field(again, 'Width').value).toBe('4.40');
    expect(field(again, 'Height').value).toBe('−2.00');
    const { document } = bench.state;
    bench.set({ document: { ...document, id: 'another' } });
    await settle(again);
    expect(field(again, 'Width').value).toBe('4.00');
    bench.set({ document });
    await settle(again);
    await type(again, field(again, 'Height'), '2.4');
    await press(again, 'Draw the room');
    expect(bench.system.room).toMatchObject({ widthMetres: 4.4, heightMetres: 2.4 });
  });

  it.each([
    ['Length, front to back', '-4', 'The length of the room lies between 1 m and 60 m'],
    ['Seat from the left wall', '4.5', 'between 0 and the room’s width of 4 m'],
  ])('says at once at its field what is wrong with %s %s', async (label, text, sentence) => {
    const bench = new PlanBench('5.1');
    const room = await mount('ll-room', { bench }, 360);
    await type(room, field(room, label), text);
    expect(findAll(room, '[role=alert]').map(textOf)).toEqual([expect.stringContaining(sentence)]);
    expect(textOf(find(room, `ll-number[label="${label}"]`))).toContain(sentence);
    expect(field(room, label).getAttribute('aria-invalid')).toBe('true');
    await type(room, field(room, label), '3.5');
    expect(findAll(room, '[role=alert]')).toEqual([]);
  });

  it('holds no size that nobody typed against a person before drawing', async () => {
    const bench = new PlanBench('5.1');
    const room = await mount('ll-room', { bench }, 360);
    await type(room, field(room, 'Width'), '1.8');
    expect(findAll(room, '[role=alert]')).toEqual([]);
    await press(room, 'Draw the room');
    expect(textOf(find(room, '[role=alert]'))).toContain('the room’s width of 1.8 m');
  });

  it('lies still while a take runs', async () => {
    const bench = new PlanBench('5.1');
    bench.runTake();
    const room = await mount('ll-room', { bench }, 360);
    const parts = findAll<HTMLInputElement | HTMLButtonElement>(room, 'input, button');
    expect(parts.map(({ disabled }) => disabled)).toEqual(parts.map(() => true));
  });
});

describe('other seats', () => {
  it('are added, named, moved and taken away', async () => {
    const bench = new PlanBench('5.1');
    const seats = await mount('ll-seats', { bench }, 360);
    await press(seats, 'Add a seat');
    await press(seats, 'Add a seat');
    expect(bench.system.seats.map(({ name }) => name)).toEqual(['Seat 2', 'Seat 3']);
    await type(seats, field(seats, 'Behind', 1), '1.1');
    await type(seats, find<HTMLInputElement>(seats, '#name-1'), 'Back row');
    expect(bench.system.seats[1]).toEqual({
      name: 'Back row',
      rightMetres: -0.6,
      backMetres: 1.1,
    });
    await press(seats, 'Take Seat 2 away');
    expect(bench.system.seats.map(({ name }) => name)).toEqual(['Back row']);
  });

  it('are refused on the main seat, on each other and without a name', async () => {
    const bench = new PlanBench('5.1', {
      seats: [
        { name: 'Seat 2', rightMetres: 0.6, backMetres: 0 },
        { name: 'Seat 3', rightMetres: -0.6, backMetres: 0 },
      ],
    });
    const before = bench.state.document;
    const seats = await mount('ll-seats', { bench }, 360);
    await type(seats, field(seats, 'To the right'), '0.1');
    expect(textOf(find(seats, '[role=alert]'))).toContain('on the main seat');
    expect(field(seats, 'To the right').value).toBe('0.60');
    await type(seats, field(seats, 'To the right'), '-0.5');
    expect(textOf(find(seats, '[role=alert]'))).toContain('on Seat 3');
    await type(seats, find<HTMLInputElement>(seats, '#name-0'), '  ');
    expect(textOf(find(seats, '[role=alert]'))).toContain('A seat has a name');
    await type(seats, find<HTMLInputElement>(seats, '#name-0'), 'Seat 3');
    expect(textOf(find(seats, '[role=alert]'))).toContain('called Seat 3 already');
    expect(find<HTMLInputElement>(seats, '#name-0').value).toBe('Seat 2');
    expect(bench.state.document).toBe(before);
  });

  it('shows a name as text, whatever is in it', async () => {
    const name = '<img src=x onerror=alert(1)>';
    const bench = new PlanBench('5.1', { seats: [{ name, rightMetres: 1, backMetres: 0 }] });
    const seats = await mount('ll-seats', { bench }, 360);
    expect(textOf(seats)).toContain(name);
    expect(findAll(seats, 'img')).toEqual([]);
  });
});
