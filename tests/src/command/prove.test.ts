import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printedReadings } from '../../../src/command/printed-readings';
import { proveCommand } from '../../../src/command/prove';
import type { Proof } from '../../../src/proof/proof';
import { usualFilters } from '../../../src/system/declared-settings';
import type { Readings } from '../../../src/reading/reading';
import { exampleReadings } from '../schema/example-readings';
import { after, before, typed, type Done } from '../proof/told-proof';
import { commandLine, freshDirectory } from './command-line';

const settings = { format: 'leadline-settings', version: 1, ...typed };

describe('leadline prove', () => {
  it('passes what was typed right, without curves but for what only they tell', async () => {
    const { code, out } = await prove({}, JSON.stringify(settings));
    expect(code).toBe(0);
    const proof: Proof = JSON.parse(out);
    expect(proof).toMatchObject({ format: 'leadline-proof', version: 1, layout: '3.1' });
    expect(proof.counts.fail).toBe(0);
    const untold = proof.lines.filter(({ verdict }) => verdict === 'cannot tell');
    expect(untold.map(({ id }) => id)).toEqual(['response FL', 'response FR', 'response FC']);
  });

  it('fails a slip and names the setting to change', async () => {
    const { code, out } = await prove({ trimDb: { FR: -2 } }, JSON.stringify(settings));
    expect(code).toBe(0);
    const proof: Proof = JSON.parse(out);
    const line = proof.lines.find(({ id }) => id === 'level FR');
    expect(line).toMatchObject({
      verdict: 'fail',
      slip: 'wrong sign',
      changes: [{ setting: 'trim', channels: ['FR'], from: -2, to: 2, unit: 'dB' }],
    });
  });

  it('takes what propose says to type when no settings are given', async () => {
    const { code, out } = await prove({});
    expect(code).toBe(0);
    const proof: Proof & { typed: typeof typed } = JSON.parse(out);
    expect(proof.typed.distanceMetres).toMatchObject({ FL: 2.4, FR: 2.6, FC: 2.2 });
  });

  it.each<[string, string, RegExp]>([
    ['settings of another layout', '{"distanceMetres":{"BL":2}}', /BL, which layout 3\.1/],
    ['a field it does not know', '{"distance":{}}', /"distance" is no field/],
    ['a crossover that cannot be', '{"crossoverHz":{"fronts":"low"}}', /crossoverHz/],
  ])('refuses %s', async (_what, text, finding) => {
    const whole = { format: 'leadline-settings', version: 1, ...JSON.parse(text) };
    const { code, out, err } = await prove({}, JSON.stringify(whole));
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
  });

  it('refuses readings of another layout, and those with settings taken out', async () => {
    const other = await proveReadings({
      ...exampleReadings(),
      layout: '2.0',
      channels: exampleReadings().channels.slice(0, 2),
    });
    expect(other).toMatchObject({ code: 1, out: '' });
    const inForce = { ...typed, equaliser: 'off' as const, filters: usualFilters };
    const { distanceMetres, trimDb, crossoverHz, equaliser, filters } = inForce;
    const declared = { distanceMetres, trimDb, crossoverHz, equaliser, filters };
    const taken = await proveReadings({ ...after({}), inForce: declared });
    expect(taken.err).toMatch(/Settings in force were taken out/);
  });
});

function prove(done: Done, text?: string) {
  return proveReadings(after(done), text);
}

function proveReadings(readings: Readings, text?: string) {
  const directory = freshDirectory();
  const write = (name: string, value: string): void => writeFileSync(join(directory, name), value);
  write('before.json', JSON.stringify(printedReadings(before, false)));
  write('after.json', JSON.stringify(printedReadings(readings, false)));
  if (text !== undefined) write('settings.json', text);
  const line = ['prove', '--before', 'before.json', '--after', 'after.json'];
  const more = text === undefined ? [] : ['--settings', 'settings.json'];
  return commandLine([proveCommand], directory, [...line, ...more]);
}
