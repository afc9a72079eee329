import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../../src/session/document';
import { carryChange } from '../../../../src/session/history/carry-change';
import {
  capturesOfHistory,
  mostSteps,
  noHistory,
  noteStep,
  oneGestureMilliseconds,
  redoStep,
  undoStep,
  type History,
} from '../../../../src/session/history/history';
import { sampleDocument, sampleTake } from '../../../components/sample-session';

const first = sampleDocument('2.0');

function named(document: SessionDocument, name: string): SessionDocument {
  return { ...document, name };
}

function warmer(document: SessionDocument, temperatureCelsius: number): SessionDocument {
  return { ...document, conditions: { ...document.conditions, temperatureCelsius } };
}

/** A history of changes, each later than one gesture after the one before, and the last document. */
function after(changes: [string, (document: SessionDocument) => SessionDocument][]) {
  let document = first;
  let history: History = noHistory;
  for (const [index, [name, change]] of changes.entries()) {
    const before = document;
    document = change(before);
    const at = index * oneGestureMilliseconds;
    history = noteStep(history, { name, run: null, at, before, after: document });
  }
  return { document, history };
}

describe('a history', () => {
  it('takes back the newest change first and brings it back', () => {
    const { document, history } = after([
      ['Rename session', (now) => named(now, 'Attic')],
      ['Set temperature', (now) => warmer(now, 27)],
    ]);
    const undone = undoStep(history, document);
    expect(undone?.document).toEqual(named(first, 'Attic'));
    const twice = undone && undoStep(undone.history, undone.document);
    expect(twice?.document).toBe(first);
    expect(twice && undoStep(twice.history, twice.document)).toBeNull();
    const again = twice && redoStep(twice.history, twice.document);
    expect(again?.document).toEqual(named(first, 'Attic'));
    const both = again && redoStep(again.history, again.document);
    expect(both?.document).toEqual(document);
    expect(both && redoStep(both.history, both.document)).toBeNull();
  });

  it('gives the very document of before, not a copy', () => {
    const { document, history } = after([['Rename session', (now) => named(now, 'Attic')]]);
    const undone = undoStep(history, document);
    expect(undone?.document).toBe(first);
    expect(undone && redoStep(undone.history, undone.document)?.document).toBe(document);
  });

  it('forgets what was undone once something else is changed', () => {
    const { document, history } = after([['Rename session', (now) => named(now, 'Attic')]]);
    const undone = undoStep(history, document);
    if (!undone) throw new Error('nothing was undone');
    const change = { name: 'Rename session', run: null, at: 1e6 };
    const cellar = named(first, 'Cellar');
    const next = noteStep(undone.history, { ...change, before: first, after: cellar });
    expect(redoStep(next, cellar)).toBeNull();
    expect(undoStep(next, cellar)?.document).toBe(first);
  });

  it('takes changes of one name that follow closely, such as a drag, as one step', () => {
    const at = (index: number) => index * (oneGestureMilliseconds - 1);
    let history: History = noHistory;
    let document = first;
    for (let index = 0; index < 5; index++) {
      const before = document;
      document = warmer(before, 21 + index);
      const step = { name: 'Set temperature', run: null, at: at(index) };
      history = noteStep(history, { ...step, before, after: document });
    }
    expect(history.past).toHaveLength(1);
    expect(undoStep(history, document)?.document).toBe(first);
  });

  it('keeps changes of one name apart that follow later, and changes of two names', () => {
    const { history } = after([
      ['Set temperature', (now) => warmer(now, 22)],
      ['Set temperature', (now) => warmer(now, 23)],
    ]);
    expect(history.past).toHaveLength(2);
    const soon = { name: 'Rename session', run: null, at: oneGestureMilliseconds };
    const next = noteStep(history, { ...soon, before: first, after: named(first, 'Attic') });
    expect(next.past).toHaveLength(3);
  });

  it('keeps the newest steps when there are too many', () => {
    const { document, history } = after(
      Array.from({ length: mostSteps + 20 }, (_, index) => [
        `Change ${index}`,
        (now: SessionDocument) => named(now, `Name ${index}`),
      ]),
    );
    expect(history.past).toHaveLength(mostSteps);
    let at = { document, history };
    for (let next = undoStep(history, document); next; next = undoStep(at.history, at.document)) {
      at = next;
    }
    expect(at.document.name).toBe('Name 19');
  });

  it('takes all changes of a run as one step, and what a person changes meanwhile as another', () => {
    const take = { ...sampleTake('2.0'), readings: null };
    const taken = { ...first, takes: [take] };
    const renamed = named(taken, 'Attic');
    const read = { ...renamed, takes: [sampleTake('2.0')] };
    const run = { name: 'Take', run: 1, at: 0 };
    let history = noteStep(noHistory, { ...run, before: first, after: taken });
    const rename = { name: 'Rename session', run: null, at: 1 };
    history = noteStep(history, { ...rename, before: taken, after: renamed });
    history = noteStep(history, { ...run, before: renamed, after: read });
    expect(history.past.map(({ name }) => name)).toEqual(['Take', 'Rename session']);
    const one = undoStep(history, read);
    expect(one?.document).toEqual({ ...read, name: first.name });
    const both = one && undoStep(one.history, one.document);
    expect(both?.document).toEqual(first);
    const taken2 = both && redoStep(both.history, both.document);
    expect(taken2?.document).toEqual({ ...read, name: first.name });
  });

  it('knows every capture it could bring back', () => {
    const take = { ...sampleTake('2.0'), loopbackId: 'a loopback' };
    const { history } = after([['Take', (now) => ({ ...now, takes: [take] })]]);
    const names = ['a loopback', take.captureId].sort();
    expect([...capturesOfHistory(history)].sort()).toEqual(names);
    const undone = undoStep(history, { ...first, takes: [take] });
    expect(undone && [...capturesOfHistory(undone.history)].sort()).toEqual(names);
  });
});

describe('a change that is taken back', () => {
  it('leaves what has changed besides as it is now', () => {
    const renamed = named(first, 'Attic');
    const found = { id: 'new id', name: 'Interface' };
    const now = { ...renamed, live: { ...renamed.live, output: found } };
    expect(carryChange(now, renamed, first)).toEqual({ ...first, live: now.live });
  });

  it('of one value beside another in the same part leaves the other', () => {
    const quieter = { ...first, live: { ...first.live, gainDb: -50 } };
    const found = { id: 'new id', name: 'Interface' };
    const now = { ...quieter, live: { ...quieter.live, output: found } };
    expect(carryChange(now, quieter, first).live).toEqual({ ...first.live, output: found });
  });

  it('keeps readings that arrived for a take it does not touch', () => {
    const unread = { ...first, takes: [{ ...sampleTake('2.0'), readings: null }] };
    const renamed = named(unread, 'Attic');
    const now = { ...renamed, takes: [sampleTake('2.0')] };
    expect(carryChange(now, renamed, unread).takes).toEqual(now.takes);
  });

  it('keeps a take that came besides', () => {
    const one = { ...sampleTake('2.0'), id: 'one' };
    const two = { ...sampleTake('2.0'), id: 'two' };
    const discarded = { ...first, takes: [] };
    const now = { ...first, takes: [two] };
    const back = carryChange(now, discarded, { ...first, takes: [one] });
    expect(back.takes.map(({ id }) => id)).toEqual(['one', 'two']);
  });

  it('drops a field that was not there before', () => {
    const before = { ...first };
    Reflect.deleteProperty(before, 'name');
    const now = warmer(first, 30);
    expect('name' in carryChange(now, first, before)).toBe(false);
  });
});
