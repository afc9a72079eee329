import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { printedReadings } from '../../../src/command/printed-readings';
import { proposeCommand } from '../../../src/command/propose';
import type { Proposal } from '../../../src/proposal/proposal';
import type { SettingsLine } from '../../../src/proposal/settings-list';
import { roomyBass } from '../proposal/sample-bass';
import { exampleReadings } from '../schema/example-readings';
import { commandLine, freshDirectory } from './command-line';

describe('leadline propose', () => {
  it('takes what "read" prints and gives every group and channel its numbers with reasons', async () => {
    const { code, out } = await propose(JSON.stringify(printedReadings(exampleReadings(), false)));
    expect(code).toBe(0);
    const proposal: Proposal = JSON.parse(out);
    expect(proposal.groups.map((group) => group.channels)).toEqual([['FL', 'FR'], ['FC']]);
    // Measured rule: first step at or above 1.25 × 57 Hz.
    expect(proposal.groups.slice(0, 2).map((group) => group.crossoverHz)).toEqual([80, 80]);
    expect(proposal.channels.map((channel) => channel.channel)).toEqual([
      'FL',
      'FR',
      'FC',
      'Sub 1',
    ]);
    for (const group of proposal.groups) expect(group.reason).toMatch(/\.$/);
    for (const channel of proposal.channels) expect(channel.distanceReason).toMatch(/\.$/);
  });

  it('keeps to the steps it is given', async () => {
    const { code, out } = await propose(JSON.stringify(exampleReadings()), '--steps', '60,90,120');
    expect(code).toBe(0);
    const proposal: Proposal = JSON.parse(out);
    expect(proposal.groups[0]?.crossoverHz).toBe(90);
  });

  it.each<[string, string[], RegExp]>([
    ['steps out of order', ['--steps', '80,60,100'], /60 comes after 80, out of order/],
    ['steps that are no numbers', ['--steps', '80,low'], /“low” is not a number/],
    ['no steps', ['--steps', ','], /there is none/],
  ])('refuses %s', async (_what, args, finding) => {
    const { code, out, err } = await propose(JSON.stringify(exampleReadings()), ...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
  });

  it('rests on every seat that is given, on a sheet and on what the tuner wants', async () => {
    const directory = freshDirectory();
    const readings = exampleReadings();
    const channels = readings.channels.map((one, index) => ({
      ...one,
      bass: roomyBass(0.001 * index, index + 1),
    }));
    writeFileSync(join(directory, 'one.json'), JSON.stringify({ ...readings, channels }));
    writeFileSync(join(directory, 'two.json'), JSON.stringify({ ...readings, channels }));
    copyFileSync('public/processors/sample-11.json', join(directory, 'sheet.json'));
    const line = 'propose --readings one.json --readings two.json --processor sheet.json';
    const args = [...line.split(' '), '--bass-preference', '-2', '--equaliser-bands', '1'];
    const { code, out } = await commandLine([proposeCommand], directory, args);
    expect(code).toBe(0);
    const proposal: Proposal & { toType: SettingsLine[] } = JSON.parse(out);
    expect(proposal).toMatchObject({ version: 2, sums: 'there', seats: ['Seat 1', 'Seat 2'] });
    expect(proposal.subs).toMatchObject({ bassPreferenceDb: -2 });
    expect(proposal.subs?.alignment?.channels.slice(0, 2)).toEqual(['FL', 'FR']);
    expect(proposal.equaliser?.channels.map(({ channel }) => channel)).toContain('Sub 1');
    expect(proposal.toType.map(({ name }) => name)).toContain('Sub low-pass');
    expect(proposal.channels[0]?.distance?.step).toBe(0.03);
  });

  it.each<[string, string[], RegExp]>([
    ['a sheet that is none', ['--processor', 'readings.json'], /readings\.json: This is not a/],
    ['a preference out of all bounds', ['--bass-preference', '40'], /--bass-preference/],
    ['half a section', ['--equaliser-bands', '1.5'], /--equaliser-bands must be a whole number/],
  ])('refuses %s', async (_what, args, finding) => {
    const { code, out, err } = await propose(JSON.stringify(exampleReadings()), ...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
  });

  it('refuses readings that are none, with the name of the file', async () => {
    const { code, out, err } = await propose('{"format":"leadline-take"}');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/readings\.json: This is not a set of readings/);
  });

  it('refuses a file that is not there', async () => {
    const args = ['propose', '--readings', 'nowhere.json'];
    const { code, out, err } = await commandLine([proposeCommand], freshDirectory(), args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/nowhere\.json cannot be read: there is no such file/);
  });
});

function propose(text: string, ...args: string[]) {
  const directory = freshDirectory();
  writeFileSync(join(directory, 'readings.json'), text);
  const line = ['propose', '--readings', 'readings.json', ...args];
  return commandLine([proposeCommand], directory, line);
}
