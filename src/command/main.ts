import { commands } from './commands';
import { runCommand } from './run-command';

const stop = new AbortController();
process.once('SIGINT', () => stop.abort());
process.stdout.on('error', () => (process.exitCode = 1));

/** npm moves to the project's directory; relative paths start where the person stands. */
const standing =
  process.env['npm_lifecycle_event'] === 'leadline' ? process.env['INIT_CWD'] : undefined;

process.exitCode = await runCommand(commands, process.argv.slice(2), {
  directory: standing ?? process.cwd(),
  signal: stop.signal,
  print: (text) => process.stdout.write(text),
  tell: (line) => process.stderr.write(`${line}\n`),
  progress: (text) => {
    if (process.stderr.isTTY) process.stderr.write(`${text}\n`);
  },
});
