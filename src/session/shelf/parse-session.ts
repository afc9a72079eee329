import { msg } from '@lit/localize';
import * as v from 'valibot';
import { describeIssue } from '../../schema/describe-issue';
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
  return { newer: false, why: describeIssue(parsed.issues[0]) };
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
