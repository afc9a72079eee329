import { parseArgs } from 'node:util';
import type { Command, GivenOptions } from './command';

/** What was typed wrongly, as a sentence. */
export interface UsageFault {
  readonly usage: string;
}

/**
 * Parses what follows a command's name. A value may begin with a minus sign when it is a number.
 * 'help' when --help is among the arguments.
 */
export function parseOptions(
  command: Command,
  args: readonly string[],
): GivenOptions | UsageFault | 'help' {
  const types = command.options.map(({ name, value, repeats = false }) => [
    name,
    { type: value === undefined ? ('boolean' as const) : ('string' as const), multiple: repeats },
  ]);
  let values: Record<string, unknown>;
  try {
    const parsed = parseArgs({
      args: joinNegativeNumbers(args),
      options: { ...Object.fromEntries(types), help: { type: 'boolean', short: 'h' } },
    });
    values = parsed.values;
  } catch (error) {
    return { usage: `${firstSentence(error)}.` };
  }
  if (values['help']) return 'help';
  const given = new Map<string, string>();
  for (const { name, fallback, required } of command.options) {
    const found = values[name];
    // No path or number holds the character that joins values.
    const value =
      found === true ? '' : Array.isArray(found) ? found.join('\0') : (found ?? fallback);
    if (typeof value === 'string') given.set(name, value);
    else if (required) return { usage: `Option --${name} is needed.` };
  }
  return given;
}

/** "--temperature -5" as "--temperature=-5", which the parser asks for. */
function joinNegativeNumbers(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (const arg of args) {
    const last = joined.at(-1);
    if (/^-\.?\d/.test(arg) && last && /^--[^=]+$/.test(last))
      joined.splice(-1, 1, `${last}=${arg}`);
    else joined.push(arg);
  }
  return joined;
}

function firstSentence(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return message.split(/\.\s|\n/)[0]?.replace(/\.$/, '') ?? message;
}
