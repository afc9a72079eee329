import { listInWords } from '../system/list-in-words';
import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import { trouble, type Trouble } from '../trouble';
import { describeIssue, inWords } from './describe-issue';

/** What a file ought to be, for the sentences about it. */
export interface FileKind {
  /** Such as "take". */
  readonly name: string;
  readonly format: string;
  /** All that can be read, oldest first. */
  readonly versions: readonly number[];
  /** What to do when the file will not do. */
  readonly advice: string;
}

/**
 * Reads JSON text from outside and holds it against a schema. A text that is no JSON, another kind
 * of file, another version or a field that does not fit gives a Trouble that says where and why.
 */
export function parseJson<Output>(
  text: string,
  kind: FileKind,
  schema: v.GenericSchema<unknown, Output>,
): Output | Trouble {
  const refuse = (finding: string): Trouble =>
    trouble(
      'bad-file',
      msg(str`This is not a ${kind.name} that can be used: ${finding}. ${kind.advice}`),
    );
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    const why =
      error instanceof Error ? error.message.replace(/\.$/, '') : msg('it cannot be parsed');
    return refuse(
      text.trim() === '' ? msg('the file is empty') : msg(str`it is not JSON (${why})`),
    );
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse(msg(str`it holds ${inWords(value)} where an object should be`));
  }
  const format = 'format' in value ? value.format : undefined;
  if (format !== kind.format) {
    return refuse(msg(str`its "format" is ${inWords(format)}, not "${kind.format}"`));
  }
  const version = 'version' in value ? value.version : undefined;
  if (!kind.versions.some((known) => known === version)) {
    const known = listInWords(kind.versions.map(String));
    const are = kind.versions.length === 1 ? msg('is') : msg('are');
    return refuse(
      msg(str`its "version" is ${inWords(version)}, and only ${known} ${are} known here`),
    );
  }
  const parsed = v.safeParse(schema, value);
  return parsed.success ? parsed.output : refuse(describeIssue(parsed.issues[0]));
}
