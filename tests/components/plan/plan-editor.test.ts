import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/plan/plan-editor';
import type { PlanEditor } from '../../../components/plan/plan-editor';
import type { ChannelLabel } from '../../../src/system/channel';
import type { DeclaredRoom } from '../../../src/system/declared-system';
import { find, findAll, mount, notNumbers, overlappingTexts, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { PlanBench } from './plan-bench';

expectQuiet();

const room: DeclaredRoom = {
  lengthMetres: 5.5,
  widthMetres: 5,
  heightMetres: 2.4,
  seatFromFrontMetres: 3.4,
  seatFromLeftMetres: 2.5,
  earHeightMetres: 1.1,
};

async function shown(bench: PlanBench, width = 600): Promise<PlanEditor> {
  const editor = await mount('ll-plan-editor', { bench }, width);
  editor.addEventListener('ll-select', (event) => (editor.selected = event.detail));
  await settle(editor);
  return editor;
}

function speaker(editor: PlanEditor, label: ChannelLabel): SVGGElement {
  return find<SVGGElement>(editor, `[data-channel="${label}"]`);
}

function middle(editor: PlanEditor, label: ChannelLabel): { x: number; y: number } {
  const svg = find(editor, 'svg').getBoundingClientRect();
  const box = find<SVGElement>(editor, `[data-channel="${label}"] .halo`).getBoundingClientRect();
  return { x: box.x + box.width / 2 - svg.x, y: box.y + box.height / 2 - svg.y };
}

/** Where the listener stands on the drawing, pixels of the screen. */
function listener(editor: PlanEditor): { x: number; y: number } {
  const svg = find<SVGSVGElement>(editor, 'svg');
  const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
  return { x: -svg.viewBox.baseVal.x * scale, y: -svg.viewBox.baseVal.y * scale };
}

/** Drags a speaker by the mouse to so many degrees around the seat and to a share of its distance. */
async function dragTo(editor: PlanEditor, label: ChannelLabel, degrees: number, share = 1) {
  const seat = listener(editor);
  const from = middle(editor, label);
  const radius = Math.hypot(from.x - seat.x, from.y - seat.y) * share;
  const angle = (degrees * Math.PI) / 180;
  const to = { x: seat.x - Math.sin(angle) * radius, y: seat.y - Math.cos(angle) * radius };
  await userEvent.dragAndDrop(find(editor, 'svg'), find(editor, 'svg'), {
    sourcePosition: from,
    targetPosition: to,
    force: true,
  });
  await settle(editor);
}

/** One event of a pointer that the browser does not know, so that a drag can stand still half way. */
async function press(
  editor: PlanEditor,
  label: ChannelLabel,
  type: string,
  at: { x: number; y: number },
): Promise<void> {
  const frame = find(editor, 'svg').getBoundingClientRect();
  const group = speaker(editor, label);
  group.setPointerCapture = () => undefined;
  const [clientX, clientY] = [frame.x + at.x, frame.y + at.y];
  group.dispatchEvent(
    new PointerEvent(type, { bubbles: true, composed: true, button: 0, clientX, clientY }),
  );
  await settle(editor);
}

describe('dragging a speaker', () => {
  it('turns it by whole degrees and leaves a distance unknown that was not dragged', async () => {
    const bench = new PlanBench('5.1');
    const editor = await shown(bench);
    await dragTo(editor, 'SiL', 95.3);
    expect(bench.calls).toEqual(['Move SiL']);
    expect(bench.system.places).toEqual({
      SiL: { azimuthDegrees: 95, elevationDegrees: 0, distanceMetres: null },
    });
    expect(editor.selected).toBe('SiL');
  });

  it('measures its distance on the drawing once it is dragged in or out', async () => {
    const bench = new PlanBench('5.1');
    const editor = await shown(bench);
    await dragTo(editor, 'SiL', 110, 0.75); // of the 2.4 m it is drawn at
    expect(bench.place('SiL')).toEqual({
      azimuthDegrees: 110,
      elevationDegrees: 0,
      distanceMetres: 1.8,
    });
  });

  it('shows angle and distance and the range on the way, and keeps the document still', async () => {
    const bench = new PlanBench('5.1', {
      places: { SiR: { azimuthDegrees: -110, elevationDegrees: 0, distanceMetres: 2 } },
    });
    const editor = await shown(bench);
    const seat = listener(editor);
    const from = middle(editor, 'SiR');
    const radius = Math.hypot(from.x - seat.x, from.y - seat.y);
    const point = (degrees: number) => ({
      x: seat.x - Math.sin((degrees * Math.PI) / 180) * radius,
      y: seat.y - Math.cos((degrees * Math.PI) / 180) * radius,
    });
    expect(findAll(editor, '.range')).toEqual([]);
    await press(editor, 'SiR', 'pointerdown', from);
    await press(editor, 'SiR', 'pointermove', point(-125));
    expect(textOf(find(editor, '.readout'))).toBe('SiR 125° right, 2.00 m');
    expect(findAll(editor, '.range')).toHaveLength(1);
    expect(bench.calls).toEqual([]);
    await press(editor, 'SiR', 'pointermove', point(-120));
    expect(textOf(find(editor, '.readout'))).toBe('SiR 120° right, 2.00 m');
    await press(editor, 'SiR', 'pointerup', point(-120));
    expect(findAll(editor, '.readout')).toEqual([]);
    expect(bench.calls).toEqual(['Move SiR']);
    expect(bench.place('SiR')?.azimuthDegrees).toBe(-120);
  });

  it('changes nothing when the drag is broken off', async () => {
    for (const end of ['pointercancel', 'Escape'] as const) {
      const bench = new PlanBench('5.1');
      const editor = await shown(bench);
      const from = middle(editor, 'FL');
      await press(editor, 'FL', 'pointerdown', from);
      await press(editor, 'FL', 'pointermove', { x: from.x - 40, y: from.y + 30 });
      expect(findAll(editor, '.readout')).toHaveLength(1);
      if (end === 'Escape') await userEvent.keyboard('{Escape}');
      else await press(editor, 'FL', end, from);
      await press(editor, 'FL', 'pointerup', { x: from.x - 40, y: from.y + 30 });
      expect(findAll(editor, '.readout')).toEqual([]);
      expect(bench.calls).toEqual([]);
      document.body.replaceChildren();
    }
  });

  it('keeps a height at its height above the ears', async () => {
    const bench = new PlanBench('5.1.2', {
      places: { TpFL: { azimuthDegrees: 30, elevationDegrees: 45, distanceMetres: 2 } },
    });
    const editor = await shown(bench);
    await dragTo(editor, 'TpFL', 40, 0.707);
    const place = bench.place('TpFL');
    const radians = ((place?.elevationDegrees ?? 0) * Math.PI) / 180;
    expect(place?.azimuthDegrees).toBe(40);
    expect((place?.distanceMetres ?? 0) * Math.sin(radians)).toBeCloseTo(Math.SQRT2, 1);
    expect((place?.distanceMetres ?? 0) * Math.cos(radians)).toBeCloseTo(1, 1);
  });

  it.each([
    ['onto another', 'FR', 30, 1, 'FR and FL would stand in one spot'],
    ['onto the seat', 'FR', -30, 0.05, 'FR would stand at the seat'],
    ['out of the room', 'FR', -100, 1.3, 'outside the room'],
  ] as const)('%s is refused', async (_, label, degrees, share, sentence) => {
    const places = { FR: { azimuthDegrees: -30, elevationDegrees: 0, distanceMetres: 2.4 } };
    const bench = new PlanBench('5.1', { room, places });
    const editor = await shown(bench);
    // In one step of the pointer, so that no good place lies on the way.
    await dragTo(editor, label, degrees, share);
    expect(textOf(find(editor, '[role=alert]'))).toContain(sentence);
    expect(bench.place('FR')?.azimuthDegrees).toBeLessThan(0);
    expect(bench.state.layout.channels.find((one) => one.label === 'FL')?.azimuthDegrees).toBe(30);
  });

  it('does nothing while a take runs', async () => {
    const bench = new PlanBench('5.1');
    bench.runTake();
    const editor = await shown(bench);
    await dragTo(editor, 'SiL', 95);
    speaker(editor, 'SiL').focus();
    await userEvent.keyboard('{ArrowLeft}{ArrowUp}');
    expect(bench.calls).toEqual([]);
    expect(textOf(editor)).toContain('Nothing on the plan changes while a take runs');
  });

  it('keeps the page still under a finger on a speaker, and lets it scroll beside it', async () => {
    const bench = new PlanBench('5.1');
    const editor = await shown(bench);
    const touch = (on: Element): boolean =>
      on.dispatchEvent(new Event('touchstart', { bubbles: true, cancelable: true }));
    expect(touch(speaker(editor, 'FL'))).toBe(false);
    expect(touch(find(editor, '.listener'))).toBe(true);
    bench.runTake();
    expect(touch(speaker(editor, 'FL'))).toBe(true);
  });

  it('lets go of the speaker by a click beside it', async () => {
    const editor = await shown(new PlanBench('5.1'));
    await userEvent.click(find(editor, 'svg'), { position: middle(editor, 'FC'), force: true });
    expect(editor.selected).toBe('FC');
    await userEvent.click(find(editor, 'svg'), { position: { x: 8, y: 120 }, force: true });
    expect(editor.selected).toBeNull();
  });
});

describe('a speaker under the keys', () => {
  it('is reached by Tab, turned and moved by arrows, further with Shift', async () => {
    const bench = new PlanBench('5.1');
    const editor = await shown(bench);
    await userEvent.tab();
    expect(editor.selected).toBe('FL');
    await userEvent.keyboard('{ArrowLeft}');
    expect(bench.place('FL')).toEqual({
      azimuthDegrees: 31,
      elevationDegrees: 0,
      distanceMetres: null,
    });
    await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
    expect(bench.place('FL')?.azimuthDegrees).toBe(26);
    await userEvent.keyboard('{ArrowUp}');
    expect(bench.place('FL')?.distanceMetres).toBe(2.45);
    await userEvent.keyboard('{Shift>}{ArrowDown}{/Shift}');
    expect(bench.place('FL')?.distanceMetres).toBe(2.2);
    expect(bench.calls).toEqual(Array.from({ length: 4 }, () => 'Move FL'));
    await settle(editor);
    expect(speaker(editor, 'FL').getAttribute('aria-label')).toBe(
      'FL, front left, 26° left, 2.20 m'.replace(' m', '\u202fm'),
    );
    expect(textOf(find(editor, '[role=status]'))).toBe('FL, 26° left, 2.20 m');
  });

  it('turns on past straight behind', async () => {
    const bench = new PlanBench('7.1', {
      places: { BL: { azimuthDegrees: 179, elevationDegrees: 0, distanceMetres: 2 } },
    });
    const editor = await shown(bench);
    speaker(editor, 'BL').focus();
    await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
    expect(bench.place('BL')?.azimuthDegrees).toBe(-179);
  });

  it('stays where it was when it would come to stand at the seat', async () => {
    const places = { FC: { azimuthDegrees: 0, elevationDegrees: 0, distanceMetres: 0.3 } };
    const bench = new PlanBench('5.1', { places });
    const editor = await shown(bench);
    speaker(editor, 'FC').focus();
    await userEvent.keyboard('{ArrowDown}');
    await settle(editor);
    expect(textOf(find(editor, '[role=alert]'))).toContain('FC would stand at the seat');
    expect(bench.system.places).toEqual(places);
    expect(bench.calls).toEqual([]);
  });
});

describe('the drawing of what was declared', () => {
  const seats = [
    { name: 'Seat 2', rightMetres: 0.6, backMetres: 0 },
    { name: 'Seat 3', rightMetres: -0.6, backMetres: 1 },
  ];

  it('shows the room to scale with the seats in it', async () => {
    const editor = await shown(new PlanBench('5.1', { room, seats }));
    const wall = find<SVGRectElement>(editor, '.wall').getBoundingClientRect();
    expect(wall.height / wall.width).toBeCloseTo(5.5 / 5, 2);
    const seat = listener(editor);
    const frame = find(editor, 'svg').getBoundingClientRect();
    expect((seat.y - (wall.y - frame.y)) / wall.height).toBeCloseTo(3.4 / 5.5, 2);
    expect(findAll(editor, '.seat-name').map(textOf)).toEqual(['Seat 2', 'Seat 3']);
  });

  for (const name of ['2.0', '5.1.4', '9.4.6']) {
    for (const width of [330, 640]) {
      it(`lets no text lie on another in ${name} at ${width} px, with a room and without`, async () => {
        for (const declared of [{}, { room, seats }]) {
          const editor = await shown(new PlanBench(name, declared), width);
          expect(overlappingTexts(editor)).toEqual([]);
          expect(notNumbers(editor)).toEqual([]);
        }
      });
    }
  }

  it('marks a bounced height, and tells it', async () => {
    const editor = await shown(new PlanBench('5.1.2', { bounced: ['TpFL', 'TpFR'] }));
    expect(findAll(speaker(editor, 'TpFL'), '.bounce')).toHaveLength(1);
    expect(speaker(editor, 'TpFL').getAttribute('aria-label')).toContain('bounced off the ceiling');
  });
});
