import { describe, expect, it } from 'vitest';
import type { Command } from '../../../src/command/command';
import { trouble } from '../../../src/trouble';
import { commandLine } from './command-line';

const measure: Command = {
  name: 'measure',
  summary: 'Measures a thing.',
  options: [
    { name: 'thing', value: 'NAME', about: 'what to measure', required: true },
    { name: 'offset', value: 'M', about: 'added to it', fallback: '0.5' },
    { name: 'twice', about: 'measures again' },
  ],
  notes: ['Things are long.'],
  run: (options) => {
    const thing = options.get('thing');
    if (thing === 'ghost') return Promise.resolve(trouble('bad-number', 'A ghost has no length.'));
    if (thing === 'hole') return Promise.resolve({ length: NaN });
    if (thing === 'wall') return Promise.reject(new Error('bumped into it'));
    return Promise.resolve(Object.fromEntries(options));
  },
};
const run = (...args: string[]) => commandLine([measure], '/', args);

describe('a command line', () => {
  it('prints the answer as JSON and ends with 0', async () => {
    const { code, out, err } = await run('measure', '--thing', 'wire', '--twice');
    expect(JSON.parse(out)).toEqual({ thing: 'wire', offset: '0.5', twice: '' });
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });

  it('takes a negative number after a space as well as after an equals sign', async () => {
    for (const offset of [['--offset', '-1.5'], ['--offset=-1.5']]) {
      const { out } = await run('measure', '--thing', 'wire', ...offset);
      expect(JSON.parse(out)).toMatchObject({ offset: '-1.5' });
    }
  });

  it('prints nothing, tells the sentence and ends with 1 when the answer is a trouble', async () => {
    const { code, out, err } = await run('measure', '--thing', 'ghost');
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toBe('leadline measure: A ghost has no length.\n');
  });

  it('prints nothing and ends with 1 when the work throws or its numbers are broken', async () => {
    const thrown = await run('measure', '--thing', 'wall');
    expect(thrown).toMatchObject({ code: 1, out: '' });
    expect(thrown.err).toMatch(/bumped into it/);
    const broken = await run('measure', '--thing', 'hole');
    expect(broken).toMatchObject({ code: 1, out: '' });
    expect(broken.err).toMatch(/length must be finite, got NaN/);
  });

  it.each<[string, string[], RegExp]>([
    ['an unknown command', ['weigh'], /no command "weigh".*measure/],
    ['an unknown option', ['measure', '--thing', 'a', '--colour', 'red'], /'--colour'/],
    ['a missing option', ['measure', '--twice'], /--thing is needed/],
    ['a missing value', ['measure', '--thing'], /--thing/],
    ['a value for a switch', ['measure', '--thing', 'a', '--twice=3'], /--twice/],
    ['a stray word', ['measure', '--thing', 'a', 'b'], /'b'/],
  ])('ends with 2 and one line of help for %s', async (_what, args, finding) => {
    const { code, out, err } = await run(...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(finding);
    expect(err).toMatch(/--help/);
    expect(err.trimEnd()).not.toContain('\n');
  });

  it('tells all commands when asked for help, and when nothing was asked', async () => {
    const asked = await run('--help');
    expect(asked).toMatchObject({ code: 0, err: '' });
    expect(asked.out).toMatch(/measure {2}Measures a thing\./);
    expect(await run()).toEqual({ code: 2, out: '', err: asked.out });
  });

  it('tells the options of one command', async () => {
    const { code, out } = await run('measure', '--help');
    expect(code).toBe(0);
    expect(out).toBe(
      [
        'Measures a thing.',
        '',
        'leadline measure --thing NAME [--offset M] [--twice]',
        '',
        '  --thing NAME  what to measure',
        '  --offset M    added to it (default 0.5)',
        '  --twice       measures again',
        '',
        'Things are long.',
        '',
      ].join('\n'),
    );
  });
});
