import { describe, expect, it } from 'vitest';
import { sampleDocument } from '../../components/sample-session';
import { beside, changed, finding, then, visit } from './told-visits';

describe('what is declared', () => {
  it('tells speakers that came and went, and compares those that stayed', () => {
    const found = beside(visit('now', {}, { layout: '7.2.4', takes: [] }));
    expect(changed(found)).toEqual(['speakers · BL', 'speakers · BR']);
    expect(changed(beside(then, { ...visit('now', {}, { layout: '7.2.4', takes: [] }) }))).toEqual([
      'speakers · BL',
      'speakers · BR',
    ]);
  });

  it('tells what was typed otherwise, with both values', () => {
    const before = { ...then, typed: { 'distance SiL': '2.40 m', 'level FC': '0.5 dB' } };
    const now = visit('now', {}, { typed: { 'distance SiL': '2.60 m', 'level FC': '0.5 dB' } });
    const found = beside(now, before);
    expect(changed(found)).toEqual(['settings · distance SiL']);
    expect(finding(found, 'settings · distance SiL').sentence).toBe(
      'Typed as distance SiL: 2.60 m; then: 2.40 m.',
    );
  });

  it('cannot tell of settings while none is ticked as typed', () => {
    const found = beside(visit('now'), { ...then, typed: { 'distance SiL': '2.40 m' } });
    expect(finding(found, 'settings · typed')).toMatchObject({
      verdict: 'cannot tell',
      action: 'Tick in Propose what is typed.',
    });
  });

  it('tells choices, settings in force and the plan apart', () => {
    const now = visit(
      'now',
      {},
      {
        chosenCrossoverHz: { fronts: 100 },
        inForce: { ...then.inForce, trimDb: { FL: -2 } },
        system: {
          ...then.system,
          places: { SiL: { azimuthDegrees: 95, elevationDegrees: 0, distanceMetres: null } },
        },
      },
    );
    const found = beside(now);
    expect(changed(found)).toEqual(['plan · places', 'settings · chosen', 'settings · in force']);
    expect(finding(found, 'settings · in force').sentence).toContain('FL −2.0 dB (then not said)');
  });

  it('tells temperature and microphone', () => {
    const now = visit(
      'now',
      {},
      {
        conditions: { ...then.conditions, temperatureCelsius: 26 },
        microphone: { ...then.microphone, orientation: 'up' },
      },
    );
    expect(changed(beside(now))).toEqual(['conditions · temperature', 'conditions · orientation']);
  });
});

describe('takes that cannot be compared', () => {
  it('are those both sessions hold', () => {
    const found = beside({ ...then, id: 'copy' });
    expect(finding(found, 'take · same · Seat 1').action).toBe('Take Seat 1 again.');
    expect(found.findings.some(({ matter }) => matter === 'level')).toBe(false);
  });

  it('are those of another place, in both directions', () => {
    const sofa = visit('now');
    const takes = sofa.takes.map((take) => ({
      ...take,
      position: { id: 'sofa', name: 'Sofa', kind: 'seat' as const },
    }));
    const found = beside({ ...sofa, takes, position: { id: 'sofa', name: 'Sofa', kind: 'seat' } });
    expect(finding(found, 'take · only here · Sofa').verdict).toBe('cannot tell');
    expect(finding(found, 'take · only then · Seat 1').verdict).toBe('cannot tell');
  });

  it('are simulated ones beside real ones', () => {
    const now = visit('now');
    const takes = now.takes.map((take) => ({ ...take, simulated: true, rig: 'practice' as const }));
    const found = beside({ ...now, rig: 'practice', takes });
    expect(finding(found, 'take · simulated · Seat 1').sentence).toContain('simulated here');
    expect(found.simulated).toBe(true);
  });

  it('are those of a layout that is no longer planned', () => {
    const found = beside(visit('now', {}, { layout: '5.1' }));
    expect(finding(found, 'take · other layout here').action).toContain('as it is planned now');
  });

  it('are none at all', () => {
    const found = beside(sampleDocument('5.2.4'));
    expect(finding(found, 'take · none').action).toBe('Take the system in Probe.');
  });

  it('are speakers with a fault', () => {
    const fault = { kind: 'bang', sentence: 'A door.' } as const;
    const found = beside(visit('now', { FC: (was) => ({ ...was, faults: [fault] }) }));
    expect(finding(found, 'take · unheard · Seat 1').channels).toEqual(['FC']);
  });

  it('are said to be later when they are', () => {
    expect(beside(then, visit('now')).notes).toHaveLength(1);
  });
});
