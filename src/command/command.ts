import type { Trouble } from '../trouble';

/** One option of a command, as it is parsed and as its help shows it. */
export interface OptionSpec {
  readonly name: string;
  /** Placeholder of its value in the help; absent for a switch. */
  readonly value?: string;
  readonly about: string;
  readonly required?: true;
  /** May be given several times; see givenAll. */
  readonly repeats?: true;
  /** Taken when the option is not given. */
  readonly fallback?: string;
}

/** Options by name; a switch that is given has the value '', one that repeats its values joined. */
export type GivenOptions = ReadonlyMap<string, string>;

/** The world as a command sees it; tests bring their own. */
export interface CommandIo {
  /** Directory that relative paths start from. */
  readonly directory: string;
  readonly signal: AbortSignal;
  /** Writes a piece of the answer to standard output. */
  print(text: string): void;
  /** Writes a line for the person to standard error. */
  tell(line: string): void;
  /** Says how far long work has come; silent where nobody watches. */
  progress(text: string): void;
}

/** One thing the bench does from a terminal. */
export interface Command {
  readonly name: string;
  readonly summary: string;
  readonly options: readonly OptionSpec[];
  /** Paragraphs after the options: what comes out, what to mind. */
  readonly notes: readonly string[];
  /** Gives the answer to print as JSON, or what went wrong. */
  run(options: GivenOptions, io: CommandIo): Promise<object | Trouble>;
}

/** All values of an option that repeats, in the order they were given; none when it was not. */
export function givenAll(options: GivenOptions, name: string): string[] {
  return options.get(name)?.split('\0') ?? [];
}

/** The value of an option that is required or has a fallback; throws RangeError without one. */
export function given(options: GivenOptions, name: string): string {
  const value = options.get(name);
  if (value === undefined) throw new RangeError(`option ${name} must be given, got nothing`);
  return value;
}
