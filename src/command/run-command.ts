import { isTrouble } from '../trouble';
import type { Command, CommandIo } from './command';
import { parseOptions } from './parse-options';
import { commandHelp, overallHelp } from './write-help';

/**
 * Runs one command line and gives its exit code: 0 when the answer was printed, 1 when what was
 * given cannot be used or the work failed (nothing is printed then), 2 when it is not understood.
 */
export async function runCommand(
  commands: readonly Command[],
  args: readonly string[],
  io: CommandIo,
): Promise<0 | 1 | 2> {
  const [name, ...rest] = args;
  if (name === undefined || ['--help', '-h', 'help'].includes(name)) {
    const help = `${overallHelp(commands)}\n`;
    if (name !== undefined) io.print(help);
    else io.tell(help.trimEnd());
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((candidate) => candidate.name === name);
  if (!command) {
    const names = commands.map((candidate) => candidate.name).join(', ');
    io.tell(`leadline: There is no command "${name}". There are: ${names}. --help tells more.`);
    return 2;
  }
  const options = parseOptions(command, rest);
  if (options === 'help') {
    io.print(`${commandHelp(command)}\n`);
    return 0;
  }
  if ('usage' in options) {
    io.tell(`leadline ${name}: ${options.usage} "leadline ${name} --help" tells its options.`);
    return 2;
  }
  return printAnswer(command, () => command.run(options, io), io);
}

async function printAnswer(
  command: Command,
  run: () => Promise<object>,
  io: CommandIo,
): Promise<0 | 1> {
  try {
    const answer = await run();
    if (isTrouble(answer)) {
      io.tell(`leadline ${command.name}: ${answer.sentence}`);
      return 1;
    }
    io.print(`${JSON.stringify(answer, refuseBrokenNumbers, 2)}\n`);
    return 0;
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error);
    io.tell(
      `leadline ${command.name}: The work failed through a fault of Leadline's own (${what}).`,
    );
    return 1;
  }
}

/** JSON would turn them into null without a word. */
function refuseBrokenNumbers(key: string, value: unknown): unknown {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`${key} must be finite, got ${value}`);
  }
  return value;
}
