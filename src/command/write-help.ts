import type { Command } from './command';

/** Help for one command. */
export function commandHelp(command: Command): string {
  const { name, summary, options, notes } = command;
  const usage = options.map((option) => {
    const text =
      option.value === undefined ? `--${option.name}` : `--${option.name} ${option.value}`;
    return option.required ? text : `[${text}]`;
  });
  const rows = options.map((option): [string, string] => [
    `--${option.name}${option.value === undefined ? '' : ` ${option.value}`}`,
    option.fallback === undefined ? option.about : `${option.about} (default ${option.fallback})`,
  ]);
  return [
    summary,
    '',
    ...folded([`leadline ${name}`, ...usage]),
    '',
    ...columns(rows),
    '',
    ...notes.flatMap((note) => [note, '']),
  ]
    .join('\n')
    .trimEnd();
}

/** Help for all commands together. */
export function overallHelp(commands: readonly Command[]): string {
  return [
    'Leadline: the bench from a terminal.',
    '',
    ...columns(commands.map(({ name, summary }) => [name, summary])),
    '',
    '--help after a command tells its options. The answer is JSON on standard output, messages go',
    'to standard error. Exit code 0: the answer can be trusted as marked. 1: what was given cannot',
    'be used, or the work failed; nothing is printed on standard output and no file is changed.',
    '2: the command line is not understood.',
  ].join('\n');
}

/** Words side by side in lines of at most 100 columns; later lines are indented. */
function folded(words: readonly string[]): string[] {
  const lines: string[] = [];
  for (const word of words) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= 100) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(last === undefined ? word : `    ${word}`);
  }
  return lines;
}

function columns(rows: readonly (readonly [string, string])[]): string[] {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}
