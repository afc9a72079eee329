import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Command } from '../../../src/command/command';
import { runCommand } from '../../../src/command/run-command';

/** What a command line left behind. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process, in `directory`. */
export async function commandLine(
  commands: readonly Command[],
  directory: string,
  args: readonly string[],
  signal = new AbortController().signal,
): Promise<Outcome> {
  let out = '';
  let err = '';
  const code = await runCommand(commands, args, {
    directory,
    signal,
    print: (text) => (out += text),
    tell: (line) => (err += `${line}\n`),
    progress: () => undefined,
  });
  return { code, out, err };
}

/** A directory that goes away with the test. */
export function freshDirectory(): string {
  const directory = mkdtempSync(join(tmpdir(), 'leadline-'));
  onTestFinished(() => rmSync(directory, { recursive: true, force: true }));
  return directory;
}
