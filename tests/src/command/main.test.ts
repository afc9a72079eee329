import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { commands } from '../../../src/command/commands';
import { commandLine, freshDirectory } from './command-line';

const root = join(import.meta.dirname, '../../..');

describe('npm run -s leadline', () => {
  it('saves a take where the person stands and prints nothing but JSON', () => {
    const directory = freshDirectory();
    const args = ['stimulus', '--layout', '5.1', '--out', 'take', '--sweep-seconds', '0.5'];
    const { status, stdout } = leadline(directory, ...args);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      channels: ['FL', 'FR', 'FC', 'Sub 1', 'SiL', 'SiR'],
    });
    expect(existsSync(join(directory, 'take/take.wav'))).toBe(true);
    expect(existsSync(join(directory, 'take/take.json'))).toBe(true);
  });

  it('ends with 1 for bad input and with 2 for a command line it does not understand', () => {
    const directory = freshDirectory();
    const bad = leadline(directory, 'stimulus', '--layout', '5.1.1', '--out', 'take');
    expect(bad).toMatchObject({ status: 1, stdout: '' });
    expect(bad.stderr).toMatch(/“5\.1\.1” names no layout/);
    expect(existsSync(join(directory, 'take'))).toBe(false);
    const odd = leadline(directory, 'stimulus', '--lay', '5.1');
    expect(odd).toMatchObject({ status: 2, stdout: '' });
  });
});

describe('the commands', () => {
  it.each(commands.map((command) => [command.name, command] as const))(
    'help of %s names every option within 100 columns',
    async (name, command) => {
      const { code, out, err } = await commandLine(commands, '/', [name, '--help']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      for (const option of command.options) expect(out).toContain(`  --${option.name}`);
      const lines = out.split('\n');
      expect(lines[2]).toMatch(new RegExp(`^leadline ${name} --`));
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(100);
    },
  );

  it('are all in the overall help', async () => {
    const { out } = await commandLine(commands, '/', ['--help']);
    for (const { name } of commands) expect(out).toContain(`  ${name} `);
  });
});

/** As npm starts it: in the project's directory, knowing where the person stands. */
function leadline(directory: string, ...args: string[]) {
  const env = { ...process.env, npm_lifecycle_event: 'leadline', INIT_CWD: directory };
  const tsx = join(root, 'node_modules/.bin/tsx');
  return spawnSync(tsx, ['src/command/main.ts', ...args], { cwd: root, env, encoding: 'utf8' });
}
