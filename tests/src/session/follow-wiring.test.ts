import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../src/session/document';
import { followWiring } from '../../../src/session/follow-wiring';
import { newSession } from '../../../src/session/new-session';
import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import { isTrouble } from '../../../src/trouble';

function sheetOf(name: string) {
  const sheet = parseSheet(readFileSync(`public/processors/${name}.json`, 'utf8'));
  if (isTrouble(sheet)) throw new Error(sheet.sentence);
  return sheet;
}

const heard: SessionDocument = {
  ...newSession('one', 'now'),
  layout: '5.1.2',
  earAnswers: { FL: { kind: 'here' }, TpFL: { kind: 'here' } },
  walk: [{ speaker: 'FL', sounds: [] }],
};

describe('what was heard of a wiring', () => {
  it('stays while neither speakers nor outputs change', () => {
    const next = { ...heard, name: 'Other' };
    expect(followWiring(heard, next)).toBe(next);
    const other = { ...heard, id: 'two', layout: '2.0' };
    expect(followWiring(heard, other)).toBe(other);
  });

  it('is forgotten with another rig, practice room or hidden fault', () => {
    for (const next of [
      { ...heard, rig: 'live' } as const,
      { ...heard, practice: { ...heard.practice, seed: 99 } },
      { ...heard, practice: { ...heard.practice, hidden: 4 } },
    ]) {
      expect(followWiring(heard, next)).toMatchObject({ earAnswers: {}, walk: [], seatSounds: [] });
    }
  });

  it('loses the walk with a speaker more, and only the answers on what has gone', () => {
    const next = followWiring(heard, { ...heard, layout: '5.1' });
    expect(next.earAnswers).toEqual({ FL: { kind: 'here' } });
    expect(next.walk).toEqual([]);
  });

  it('loses the answers on channels that another sheet puts on other outputs', () => {
    const next = followWiring(heard, { ...heard, sheet: sheetOf('sample-11') });
    expect(next.earAnswers).toEqual({});
  });
});
