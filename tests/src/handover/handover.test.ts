import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { gatherHandover } from '../../../src/handover/gather-handover';
import type { HandedOver } from '../../../src/handover/handed-over';
import { handoverCsv } from '../../../src/handover/handover-csv';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { sayInverted } from '../../../src/proposal/say-inverted';
import { mostNotes, withNotes } from '../../../src/session/notes';
import { sessionSchema } from '../../../src/session/store-schema';
import { isTrouble } from '../../../src/trouble';
import { sampleDocument } from '../../components/sample-session';
import { readStrictCsv } from '../inspect/strict-csv';
import { after, before, layout, prove, typed, type Done } from '../proof/told-proof';

const madeAt = '2025-03-04T05:06:07.000Z';

function handedOver(done: Done, notes = ''): HandedOver {
  const proposal = proposeSettings(before, layout, defaultProcessorSteps);
  if (isTrouble(proposal)) throw new RangeError(proposal.sentence);
  const proof = { ...prove(done), id: 'told', typed, readings: after(done), before, toRepeat: [] };
  const document = withNotes(sampleDocument(layout.name), notes);
  return { document, layout, proposal, proof, readings: before };
}

describe('the handover', () => {
  it('holds every speaker with its settings, and every line of the proof', () => {
    const state = handedOver({});
    const { outputs, proof, simulated } = gatherHandover(state, madeAt);
    expect(outputs.map(({ channel }) => channel)).toEqual(['FL', 'FR', 'FC', 'Sub 1']);
    // The microphone hears FR 0.2 m behind FL and FC 0.2 m before it.
    expect(outputs.slice(0, 3).map(({ distance }) => distance)).toEqual([
      '2.40 m',
      '2.60 m',
      '2.20 m',
    ]);
    expect(outputs[3]?.crossover).toBeNull();
    expect(proof?.lines).toHaveLength(state.proof?.lines.length ?? 0);
    expect(simulated).toBe(true);
  });

  it('says the conditions: when, where, by which microphone, how warm, how quiet', () => {
    const { conditions } = gatherHandover(handedOver({}), madeAt, '0.1.0+1a2b3c4d');
    const of = Object.fromEntries(conditions.map(({ name, value }) => [name, value]));
    expect(of).toMatchObject({
      Position: 'Seat 1',
      Microphone: 'practice room, simulated',
      'Calibration file': 'none',
      Temperature: '20.0 °C',
      'Room noise': '−90.0 dBFS, no level calibration',
      'Times refer to': 'FL at 2.40 m',
      'Proved on': 'not yet',
      Program: 'Version 0.1.0, build 1a2b3c4d',
    });
  });

  it('says to swap wires until the polarity is proved', () => {
    const state = handedOver({});
    const { proposal, proof } = state;
    if (!proposal || !proof) throw new RangeError('nothing proposed or proved');
    const channels = proposal.channels.map((one) =>
      one.channel === 'FR' ? { ...one, warnings: [sayInverted('front right', false)] } : one,
    );
    const turned = { ...state, proposal: { ...proposal, channels } };
    const caution = 'Front right pushes where the others pull';
    const cautionsOf = (one: HandedOver) => gatherHandover(one, madeAt).cautions.join(' ');
    expect(proof.lines).toContainEqual(
      expect.objectContaining({ claim: 'polarity', channels: ['FR'], verdict: 'pass' }),
    );
    expect(cautionsOf(turned)).not.toContain(caution);
    expect(cautionsOf({ ...turned, proof: null })).toContain(caution);
    const lines = proof.lines.map((one) => ({ ...one, verdict: 'cannot tell' as const }));
    expect(cautionsOf({ ...turned, proof: { ...proof, lines } })).toContain(caution);
  });

  it('cautions where nothing is proved or proposed', () => {
    const state = { ...handedOver({}), proposal: null, proof: null };
    const { cautions, outputs } = gatherHandover(state, madeAt);
    expect(cautions.join(' ')).toContain('Nothing was proved');
    expect(cautions.join(' ')).toContain('There are no settings');
    expect(outputs.every(({ distance }) => distance === null)).toBe(true);
  });

  it('is plain data that JSON keeps whole', () => {
    const handover = gatherHandover(handedOver({ trimDb: { FR: -2 } }, 'One.\nTwo.'), madeAt);
    expect(JSON.parse(JSON.stringify(handover))).toEqual(handover);
    expect(handover.notes).toBe('One.\nTwo.');
  });
});

describe('the handover as CSV', () => {
  it('has one fact a row, numbers plain with their unit beside them', () => {
    const rows = readStrictCsv(handoverCsv(gatherHandover(handedOver({}), madeAt)));
    expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([6]));
    expect(rows).toContainEqual(['settings', 'distance', 'FR', '2.60', 'm', '']);
    expect(rows).toContainEqual(['session', 'made', '', '', '', madeAt]);
    expect(rows.filter(([section]) => section === 'proof').length).toBeGreaterThan(10);
  });

  it('keeps what looks like a formula from being run, and notes as they were typed', () => {
    const csv = handoverCsv(gatherHandover(handedOver({}, '=1+1, "so"\nend'), madeAt));
    const note = readStrictCsv(csv).find(([section]) => section === 'notes');
    expect(note?.[5]).toBe('\'=1+1, "so"\nend');
  });
});

describe('notes', () => {
  it('are cut to what a session holds, and a session without them has none', () => {
    const long = withNotes(sampleDocument('5.1'), 'x'.repeat(100_000));
    expect(long.notes).toHaveLength(mostNotes);
    const { notes, ...older } = sampleDocument('5.1');
    expect(notes).toBe('');
    const stored: unknown = JSON.parse(JSON.stringify(older));
    expect(v.parse(sessionSchema, stored).notes).toBe('');
  });

  it('that are too long are refused in what is read back', () => {
    const stored: unknown = { ...sampleDocument('5.1'), notes: 'x'.repeat(mostNotes + 1) };
    expect(v.safeParse(sessionSchema, stored).success).toBe(false);
  });
});
