import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../../src/session/document';
import { inListOrder, type StoredSession } from '../../../../src/session/shelf/stored-session';
import { progressOf, summariseSession } from '../../../../src/session/shelf/summarise-session';
import { sampleDocument, sampleTake } from '../../../components/sample-session';

const fresh = sampleDocument('2.0');

function stored(name: string, order: number, changedAt: string): StoredSession {
  const summary = summariseSession({ ...fresh, name, createdAt: changedAt }, changedAt);
  return { id: name, name, order, deleted: false, summary, problem: null };
}

describe('the order of the list', () => {
  it('follows the order of changes, also when the clock was set back between them', () => {
    const list = [
      stored('first', 1, '2031-05-01T00:00:00.000Z'),
      stored('third', 3, '1970-01-01T00:00:00.000Z'),
      stored('second', 2, '2030-01-01T00:00:00.000Z'),
    ];
    expect(inListOrder(list).map(({ name }) => name)).toEqual(['third', 'second', 'first']);
  });

  it('follows the day of creation where nothing else is known', () => {
    const list = [
      stored('older', 0, '2029-01-01T00:00:00.000Z'),
      stored('newer', 0, '2030-01-01T00:00:00.000Z'),
    ];
    expect(inListOrder(list).map(({ name }) => name)).toEqual(['newer', 'older']);
  });
});

describe('how far a session has come', () => {
  const cases: [string, Partial<SessionDocument>, string][] = [
    ['nothing declared', {}, 'new'],
    ['one speaker placed', { system: { ...fresh.system, places: { FL: place() } } }, 'planned'],
    ['half of the channels heard', { earAnswers: { FL: { kind: 'here' } } }, 'new'],
    [
      'all channels heard or walked to',
      { earAnswers: { FL: { kind: 'here' } }, walk: [{ speaker: 'FR', sounds: [] }] },
      'wired',
    ],
    [
      'a channel heard elsewhere',
      { earAnswers: { FL: { kind: 'here' }, FR: { kind: 'elsewhere', speaker: 'FL' } } },
      'new',
    ],
    ['a take of its layout read', { takes: [sampleTake('2.0')] }, 'probed'],
    ['a take of another layout', { takes: [sampleTake('5.1')] }, 'new'],
    ['a take that is not read', { takes: [{ ...sampleTake('2.0'), readings: null }] }, 'new'],
  ];
  for (const [what, changes, progress] of cases) {
    it(`is ${progress} with ${what}`, () =>
      expect(progressOf({ ...fresh, ...changes })).toBe(progress));
  }

  it('counts the bytes of takes and their loopbacks', () => {
    const take = sampleTake('2.0');
    const samples = take.schedule.lengthSamples;
    const half = { ...take, captureRate: take.schedule.sampleRate / 2, loopbackId: 'loopback' };
    const summary = summariseSession({ ...fresh, takes: [take, half] }, fresh.createdAt);
    expect(summary.takes).toBe(2);
    expect(summary.soundBytes).toBe(8 * samples);
  });
});

function place() {
  return { azimuthDegrees: 30, elevationDegrees: 0, distanceMetres: 2 };
}
