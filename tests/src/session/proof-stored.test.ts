import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import type { TakeRecord } from '../../../src/session/document';
import { sessionSchema } from '../../../src/session/store-schema';
import { takesHere } from '../../../src/session/take-record';
import { factorySettings } from '../../../src/system/processor-settings';
import { sampleDocument, sampleTake } from '../../components/sample-session';

const probe: TakeRecord = sampleTake('2.1');
const settings = { ...factorySettings, trimDb: { FR: -1 }, crossoverHz: { fronts: null } };
const proof: TakeRecord = {
  ...probe,
  id: 'a proof',
  purpose: 'prove',
  proves: { id: 'first', settings },
};
const document = { ...sampleDocument('2.1'), takes: [probe, proof] };

describe('takes that prove', () => {
  it('are kept with what they prove, and with the slips of the practice room', () => {
    const slips = [
      { kind: 'wrong side', channels: ['FL'] },
      { kind: 'wrong unit', taken: 'feet', channels: ['FR'] },
      { kind: 'full range', group: 'fronts' },
      { kind: 'own low-pass', channels: ['Sub 1'], hz: 80, order: 2 },
      { kind: 'dynamics', thresholdDb: -30, share: 0.5 },
    ] as const;
    const whole = { ...document, practice: { ...document.practice, slips } };
    const stored: unknown = JSON.parse(JSON.stringify(whole));
    expect(v.parse(sessionSchema, stored)).toMatchObject({
      practice: { slips },
      takes: [{ id: probe.id }, { purpose: 'prove', proves: { id: 'first', settings } }],
    });
  });

  it('stand apart from those that read the system', () => {
    expect(takesHere(document)).toEqual([probe]);
    expect(takesHere(document, 'prove')).toEqual([proof]);
  });

  it('are not there in older sessions, nor are slips', () => {
    const { slips, ...practice } = document.practice;
    expect(slips).toEqual([]);
    const stored: unknown = JSON.parse(JSON.stringify({ ...document, practice }));
    expect(v.parse(sessionSchema, stored).practice.slips).toEqual([]);
  });

  it.each([
    ['a slip nobody knows', { practice: { seed: 1, slips: [{ kind: 'else' }] } }],
    [
      'a share above 1',
      { practice: { seed: 1, slips: [{ kind: 'dynamics', thresholdDb: 0, share: 2 }] } },
    ],
    ['a proof of nothing', { takes: [{ ...proof, proves: { id: 'first' } }] }],
    ['another purpose', { takes: [{ ...proof, purpose: 'play' }] }],
  ])('are refused with %s', (_what, change) => {
    const stored: unknown = JSON.parse(JSON.stringify({ ...document, ...change }));
    expect(v.safeParse(sessionSchema, stored).success).toBe(false);
  });
});
