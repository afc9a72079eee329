import { msg, str } from '@lit/localize';
import * as v from 'valibot';
import type { SessionDocument } from '../document';
import { migrateSession } from '../migrate-session';
import { newSession } from '../new-session';
import { sessionSchema } from '../store-schema';

/** A session that was read, or why it was not. */
export type ParsedSession =
  | { readonly document: SessionDocument }
  /** `newer`: it was made by a newer version; `why` is part of a sentence. */
  | { readonly newer: boolean; readonly why: string };

/** Holds a stored value of any version against the schema. */
export function parseSession(stored: unknown): ParsedSession {
  if (isNewer(stored)) return { newer: true, why: msg('it was made by a newer Leadline') };
  const parsed = v.safeParse(sessionSchema, migrateSession(stored));
  if (parsed.success) return { document: parsed.output };
  return { newer: false, why: whereAndWhy(parsed.issues[0]) };
}

function isNewer(stored: unknown): boolean {
  return (
    typeof stored === 'object' &&
    stored !== null &&
    'version' in stored &&
    typeof stored.version === 'number' &&
    stored.version > newSession('', '').version
  );
}

function whereAndWhy(issue: v.BaseIssue<unknown>): string {
  const where = v.getDotPath(issue) ?? msg('the whole document');
  if (issue.input === undefined) return msg(str`${where} is missing`);
  const expected = issue.expected ? msg(str`expected ${issue.expected}`) : issue.message;
  const found = issue.received.length > 60 ? `${issue.received.slice(0, 60)}…` : issue.received;
  return msg(str`${where}: ${expected}, found ${found}`);
}
