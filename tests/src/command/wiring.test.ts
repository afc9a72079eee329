import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { wiringCommand } from '../../../src/command/wiring';
import { sampleText } from '../system/sheet/sample-sheets';
import { commandLine, freshDirectory } from './command-line';

describe('leadline wiring', () => {
  it('prints each output in use with its channel', async () => {
    const { code, out, err } = await wiring('5.1', sampleText('sample-11'));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const outputs = ['1 FL', '2 FR', '3 FC', '4 SiL', '5 SiR', 'S1 Sub 1'];
    expect(JSON.parse(out)).toMatchObject({
      wired: true,
      layout: '5.1',
      invented: true,
      outputs: outputs.map((text) => ({
        output: text.split(' ')[0],
        channel: text.slice(text.indexOf(' ') + 1),
      })),
    });
  });

  it('answers a layout that cannot be wired with conflicts and names of layouts that can', async () => {
    const { code, out } = await wiring('9.1.4', sampleText('sample-11'));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      wired: false,
      conflicts: [{ rules: ['one role per output'], outputs: ['A1', 'A2'] }],
      nearest: ['7.1.4', '9.1.2', '6.1.4', '7.0.4', '8.1.2'],
    });
  });

  it.each<[string, string, string, RegExp]>([
    ['a layout that is none', '10.1', sampleText('sample-11'), /there is no bed of 10/],
    ['a sheet that is no JSON', '5.1', '{', /sheet\.json: This is not a processor sheet/],
    ['another kind of file', '5.1', '{"format":"leadline-take"}', /"format" is "leadline-take"/],
    [
      'a contradictory sheet',
      '5.1',
      sampleText('sample-11').replace('"A2"', '"A1"'),
      /"outputs\[8\]\.id" is "A1"/,
    ],
  ])('refuses %s with a sentence', async (_what, layout, text, finding) => {
    const { code, out, err } = await wiring(layout, text);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
  });

  it('refuses a file that is not there', async () => {
    const args = ['wiring', '--layout', '5.1', '--processor', 'nowhere.json'];
    const { code, err } = await commandLine([wiringCommand], freshDirectory(), args);
    expect(code).toBe(1);
    expect(err).toMatch(/nowhere\.json cannot be read: there is no such file/);
  });
});

function wiring(layout: string, text: string) {
  const directory = freshDirectory();
  writeFileSync(join(directory, 'sheet.json'), text);
  const args = ['wiring', '--layout', layout, '--processor', 'sheet.json'];
  return commandLine([wiringCommand], directory, args);
}
