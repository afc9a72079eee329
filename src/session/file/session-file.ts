import * as v from 'valibot';
import { sampleCount } from '../../schema/schema-parts';
import type { SessionDocument } from '../document';

/** What session.json of a session file holds beside the session itself. */
export interface SessionFile {
  readonly format: 'leadline-session-file';
  readonly version: 1;
  readonly savedAt: string;
  /** The recordings in the file, each an entry with one channel of 32-bit float. */
  readonly captures: readonly FiledCapture[];
  /** Recordings the session names and the file lacks, because they were lost before it was saved. */
  readonly missing: readonly string[];
  /** The session, of this version or an earlier one; held against its own schema. */
  readonly session: unknown;
}

export interface FiledCapture {
  /** As the session's takes name it. */
  readonly id: string;
  /** Its entry, such as captures/1.wav. */
  readonly file: string;
  readonly frames: number;
}

/** Shape of session.json, version 1. */
export const sessionFileSchema = v.object({
  format: v.literal('leadline-session-file'),
  version: v.literal(1),
  savedAt: v.string(),
  captures: v.array(v.object({ id: v.string(), file: v.string(), frames: sampleCount })),
  missing: v.array(v.string()),
  session: v.unknown(),
}) satisfies v.GenericSchema<unknown, SessionFile>;

/** A recording that a session names, and the rate it was made at. */
export interface NamedCapture {
  readonly id: string;
  readonly sampleRate: number;
}

/** All recordings a session names, each once, in the order of its takes. */
export function capturesOf({ takes }: SessionDocument): NamedCapture[] {
  const named = new Map<string, number>();
  for (const { captureId, loopbackId, captureRate } of takes) {
    named.set(captureId, captureRate);
    if (loopbackId !== null) named.set(loopbackId, captureRate);
  }
  return [...named].map(([id, sampleRate]) => ({ id, sampleRate }));
}

/** A name for the file of a session: its own, without what file systems refuse. */
export function sessionFileName(name: string): string {
  const plain = name
    .replace(/[^\p{L}\p{N} _-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 60)
    .trim();
  return `${plain === '' ? 'session' : plain}.leadline.zip`;
}
