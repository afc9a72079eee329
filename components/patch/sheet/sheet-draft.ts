import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../src/trouble';
import { createMemory } from '../../probe/memory';

/** A sheet as it is being typed: any value may still be wrong. */
export type Draft = Readonly<Record<string, unknown>>;

/** Where a value stands in a draft. */
export type DraftPath = readonly (string | number)[];

/** What is wrong with a draft, and at which field. */
export interface DraftFinding {
  readonly sentence: string;
  readonly field: string;
}

/** The draft in hand; null while none is edited. */
export const drafts = createMemory<Draft | null>(() => null);

export function draftOf(sheet: ProcessorSheet): Draft {
  return { ...sheet };
}

/** The sheet a draft makes, or the first thing that is wrong with it. */
export function checkDraft(draft: Draft): ProcessorSheet | DraftFinding {
  const read = parseSheet(JSON.stringify(draft));
  if (!isTrouble(read)) return read;
  const sentence = read.sentence
    .replace(/^[^:]*: /, '')
    .replace(/\. (Change the field in the file|Start from one of the samples[^]*)\.$/, '.');
  return {
    sentence: sentence.replace(/^\w/, (first) => first.toUpperCase()),
    field: fieldIn(sentence),
  };
}

/** The first field that a sentence names, such as outputs[2].name. */
function fieldIn(sentence: string): string {
  return /"([A-Za-z]\w*(?:\.\w+|\[\d+\])*)"/.exec(sentence)?.[1] ?? '';
}

/** A path as sentences write it. */
export function fieldName(path: DraftPath): string {
  const parts = path.map((part) => (typeof part === 'number' ? `[${part}]` : `.${part}`));
  return parts.join('').replace(/^\./, '');
}

/** Whether a field holds what a finding names. */
export function holds(path: DraftPath, finding: DraftFinding | null): boolean {
  const name = fieldName(path);
  const field = finding?.field ?? '';
  return field === name || field.startsWith(`${name}.`) || field.startsWith(`${name}[`);
}

export function valueAt(draft: unknown, path: DraftPath): unknown {
  return path.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null
        ? (value as Readonly<Record<string, unknown>>)[part]
        : undefined,
    draft,
  );
}

export function listAt(draft: unknown, path: DraftPath): readonly unknown[] {
  const value = valueAt(draft, path);
  return Array.isArray(value) ? value : [];
}

/** The draft with another value at a path; undefined takes a field away. */
export function withValue<Value>(value: Value, path: DraftPath, next: unknown): Value {
  const [part, ...rest] = path;
  if (part === undefined) return next as Value;
  const inner = withValue(valueAt(value, [part]), rest, next);
  if (Array.isArray(value)) {
    return value.map((one: unknown, index) => (index === part ? inner : one)) as Value;
  }
  return { ...value, [part]: inner };
}

/** Another id for an output, wherever the sheet names it. */
export function withRenamedOutput(draft: Draft, before: string, after: string): Draft {
  const renamed = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(renamed);
    return value === before ? after : value;
  };
  const exclusive = listAt(draft, ['exclusive']).map((set) => ({
    ...(set as object),
    choices: listAt(set, ['choices']).map((choice) => {
      const outputs = valueAt(choice, ['outputs']);
      return outputs === undefined ? choice : { ...(choice as object), outputs: renamed(outputs) };
    }),
  }));
  const filling = withValue(
    draft,
    ['filling', 'outputs'],
    renamed(valueAt(draft, ['filling', 'outputs'])),
  );
  return { ...filling, pairs: renamed(draft['pairs']), exclusive };
}
