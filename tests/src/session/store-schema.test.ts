import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { sessionSchema } from '../../../src/session/store-schema';
import { sampleDocument, sampleTake } from '../../components/sample-session';

const session = { ...sampleDocument('5.2.4'), takes: [sampleTake('5.2.4')] };

function whereRefused(value: unknown): string | null {
  const parsed = v.safeParse(sessionSchema, value);
  return parsed.success ? null : (v.getDotPath(parsed.issues[0]) ?? '');
}

describe('the schema of a stored session', () => {
  it('takes a session with a take and gives it back unchanged', () => {
    expect(v.parse(sessionSchema, session)).toEqual(session);
  });

  it('takes a take that is not read yet', () => {
    const [take] = session.takes;
    expect(whereRefused({ ...session, takes: [{ ...take, readings: null }] })).toBeNull();
  });

  it('takes a crossover the tuner chose and refuses one for a group that is none', () => {
    expect(whereRefused({ ...session, chosenCrossoverHz: { sides: 90 } })).toBeNull();
    expect(whereRefused({ ...session, chosenCrossoverHz: { balcony: 90 } })).toBe(
      'chosenCrossoverHz.balcony',
    );
  });

  const damages: [string, unknown, string][] = [
    ['another format', { ...session, format: 'something-else' }, 'format'],
    ['a version it does not know', { ...session, version: 7 }, 'version'],
    ['a layout that means nothing', { ...session, layout: '5.1.3' }, 'layout'],
    ['an infinite seed', { ...session, practice: { seed: Infinity } }, 'practice.seed'],
    [
      'a test signal above full scale',
      { ...session, live: { ...session.live, gainDb: 3 } },
      'live.gainDb',
    ],
    [
      'a capture without a rate',
      { ...session, takes: [{ ...sampleTake('5.1'), captureRate: 0 }] },
      'takes.0.captureRate',
    ],
    ['a name of a whole page', { ...session, name: 'x'.repeat(1001) }, 'name'],
    [
      'a take that stands there twice',
      { ...session, takes: [session.takes[0], session.takes[0]] },
      'takes',
    ],
    [
      'a tape distance no room holds',
      { ...session, conditions: { temperatureCelsius: 20, referenceDistanceMetres: 1e308 } },
      'conditions.referenceDistanceMetres',
    ],
    [
      'a temperature nobody measures at',
      { ...session, conditions: { temperatureCelsius: -1e308, referenceDistanceMetres: 2.4 } },
      'conditions.temperatureCelsius',
    ],
    [
      'a crossover above what is kept of the bass',
      { ...session, processor: { ...session.processor, crossoverHz: [80, 1000] } },
      'processor.crossoverHz.1',
    ],
    [
      'a distance step of light years',
      { ...session, processor: { ...session.processor, distanceStepMetres: 1e308 } },
      'processor.distanceStepMetres',
    ],
    [
      'a take without a schedule',
      { ...session, takes: [{ ...sampleTake('5.1'), schedule: {} }] },
      'takes.0.schedule.format',
    ],
  ];
  for (const [what, value, where] of damages) {
    it(`refuses ${what} and says where`, () => expect(whereRefused(value)).toBe(where));
  }
});
