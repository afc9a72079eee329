import { msg, str } from '@lit/localize';
import type * as v from 'valibot';

/** One finding of the schema as part of a sentence: where, what was expected, what was found. */
export function describeIssue(issue: v.BaseIssue<unknown>): string {
  const path = (issue.path ?? []).map(({ key }) =>
    typeof key === 'number' ? `[${key}]` : `.${String(key)}`,
  );
  const field = path.join('').replace(/^\./, '');
  const where = field === '' ? msg('the whole of it') : `"${field}"`;
  if (issue.type === 'strict_object' && issue.expected === 'never') {
    return msg(str`${where} is no field that is known here`);
  }
  if (issue.input === undefined) return msg(str`${where} is missing`);
  return msg(str`${where} is ${inWords(issue.input)} and should be ${expectation(issue)}`);
}

/** The schema library's words for what it expects, and ours. */
const ourWords = (): readonly (readonly [RegExp, string])[] => [
  [/^\((.*)\)$/, '$1'],
  [/^>=/, msg('at least ')],
  [/^<=/, msg('at most ')],
  [/^>/, msg('above ')],
  [/^Object$/, msg('an object')],
  [/^Array$/, msg('a list')],
  [/^number$/, msg('a number')],
  [/^string$/, msg('a text')],
  [/^boolean$/, msg('true or false')],
  [/ \| /g, ` ${msg('or')} `],
];

function expectation({ type, expected, message }: v.BaseIssue<unknown>): string {
  if (type === 'check') return message;
  if (type === 'integer') return msg('a whole number');
  if (type === 'finite') return msg('a finite number');
  if (type === 'min_length') return msg('longer');
  if (expected === null) return msg('something else');
  return ourWords().reduce((words, [theirs, ours]) => words.replace(theirs, ours), expected);
}

/** A value that was found, in words. */
export function inWords(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return msg('a list');
  if (typeof value === 'object' && value !== null) return msg('an object');
  const text = JSON.stringify(value);
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
