import { describe, expect, it } from 'vitest';
import { createPlugBoard, type PlugWork } from '../../../../src/session/run/plug-board';
import { writePrompt } from '../../../../src/session/run/write-prompt';
import type { ChannelLabel } from '../../../../src/system/channel';
import { scheduleTake } from '../../../../src/take/schedule-take';
import type { TakePart } from '../../../../src/take/take-plan';
import { layoutOf } from '../../../components/fake-bench';

/** A part in which these outputs feed these speakers; only what a board looks at is told. */
function partOf(routes: TakePart['routes'], changes: Partial<TakePart> = {}): TakePart {
  const channels = Object.keys(routes) as ChannelLabel[];
  return {
    schedule: { ...scheduleTake(layoutOf('5.2.4')), channels },
    routes,
    moves: [],
    switchOff: [],
    switchOn: [],
    ...changes,
  };
}

const home = partOf({ FL: 0, FC: 2 });
const moved = partOf({ FL: 0, TpBL: 2 }, { moves: [{ output: 2, from: 'FC', to: 'TpBL' }] });
const nothing: PlugWork = { moves: [], look: [], switchOff: [], switchOn: [] };

describe('the board of plugs', () => {
  it('asks for nothing while every plug stands where the first part wants it', () => {
    expect(createPlugBoard().workFor(home)).toBeNull();
  });

  it('asks for a planned move once, and for the way back later', () => {
    const board = createPlugBoard();
    const work = board.workFor(moved);
    expect(work?.moves).toEqual([{ output: 2, from: 'FC', to: 'TpBL' }]);
    if (work) board.done(work);
    expect(board.workFor(moved)).toBeNull();
    expect(board.workFor(home)?.moves).toEqual([{ output: 2, from: 'TpBL', to: 'FC' }]);
  });

  it('has a plug looked at when its move may have been done or not', () => {
    const board = createPlugBoard();
    const work = board.workFor(moved);
    if (work) board.interrupted(work);
    expect(board.workFor(home)?.look).toEqual([{ output: 2, speaker: 'FC' }]);
    expect(board.workFor(moved)?.look).toEqual([{ output: 2, speaker: 'TpBL' }]);
  });

  it('doubts the plugs of a plan only where it moves any', () => {
    const board = createPlugBoard();
    board.doubt({ parts: [home, moved] });
    const work = board.workFor(home);
    expect(work).toEqual({ ...nothing, look: [{ output: 2, speaker: 'FC' }] });
    if (work) board.done(work);
    expect(board.workFor(home)).toBeNull();
  });

  it('has a speaker switched on again that was switched off for another', () => {
    const board = createPlugBoard();
    const one = partOf({ FL: 0, 'Sub 1': 3 }, { switchOff: ['Sub 2'] });
    const two = partOf({ FL: 0, 'Sub 2': 3 }, { switchOff: ['Sub 1'] });
    const first = board.workFor(one);
    expect(first?.switchOff).toEqual(['Sub 2']);
    if (first) board.done(first);
    expect(board.workFor(two)).toEqual({ ...nothing, switchOff: ['Sub 1'], switchOn: ['Sub 2'] });
  });
});

describe('speakers that play along', () => {
  const all = partOf({ FL: 0, FR: 1 }, { allOn: ['Sub 1', 'Sub 2'] });
  const alone = partOf({ FL: 0, 'Sub 2': 3 }, { switchOff: ['Sub 1'] });

  it('are switched on where nobody knows whether they are, and asked for once', () => {
    const board = createPlugBoard();
    const work = board.workFor(all);
    expect(work).toEqual({ ...nothing, switchOn: ['Sub 1', 'Sub 2'] });
    if (work) board.done(work);
    expect(board.workFor(all)).toBeNull();
  });

  it('are switched on again after another played alone, and after that was broken off', () => {
    const board = createPlugBoard();
    const first = board.workFor(all);
    if (first) board.done(first);
    const work = board.workFor(alone);
    if (work) board.done(work);
    expect(board.workFor(all)?.switchOn).toEqual(['Sub 1']);
    if (work) board.interrupted(work);
    expect(board.workFor(all)?.switchOn).toEqual(['Sub 1']);
  });
});

describe('the prompt', () => {
  it('says in order what the hands have to do, outputs counted from 1', () => {
    const prompt = writePrompt({
      moves: [
        { output: 2, from: 'FC', to: 'TpBL' },
        { output: 4, from: null, to: 'TpBR' },
      ],
      look: [],
      switchOff: ['Sub 2'],
      switchOn: ['Sub 1'],
    });
    expect(prompt.title).toBe('Before the next part: move 2 plugs');
    expect(prompt.steps).toEqual([
      'Switch the amplifiers off before you touch a plug.',
      'Move the plug on output 3 from FC to TpBL.',
      'Plug TpBR into output 5.',
      'Switch the amplifiers on again.',
      'Switch Sub 2 off: it shares its output.',
      'Switch Sub 1 on.',
      'Then go on.',
    ]);
  });

  it('leaves the amplifiers on when no plug is touched', () => {
    const prompt = writePrompt({ ...nothing, switchOff: ['Sub 2'], switchOn: ['Sub 1'] });
    expect(prompt.title).toBe('Before the next part: switch Sub 2 off, Sub 1 on');
    expect(prompt.steps.join(' ')).not.toMatch(/amplifier/);
  });
});
