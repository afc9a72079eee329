import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { visitsCommand } from '../../../src/command/visits';
import type { SessionDocument } from '../../../src/session/document';
import { writeSessionFile } from '../../../src/session/file/write-session-file';
import { isTrouble } from '../../../src/trouble';
import type { VisitComparison } from '../../../src/visits/visits';
import { memoryStore } from '../session/memory-store';
import { louder, then, visit } from '../visits/told-visits';
import { commandLine, freshDirectory } from './command-line';

describe('leadline visits', () => {
  it('prints what changed between two session files', async () => {
    const { code, out } = await visits(visit('now', { SiR: louder(-2) }));
    expect(code).toBe(0);
    const comparison: VisitComparison = JSON.parse(out);
    expect(comparison).toMatchObject({ format: 'leadline-visits', version: 1 });
    expect(comparison.counts.changed).toBe(1);
    const [found] = comparison.findings.filter(({ verdict }) => verdict === 'changed');
    expect(found?.id).toBe('level · SiR · Seat 1');
  });

  it('refuses what is no session file, by name', async () => {
    const { code, out, err } = await visits(null);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toContain('now.zip: ');
  });
});

async function visits(now: SessionDocument | null) {
  const directory = freshDirectory();
  writeFileSync(join(directory, 'now.zip'), now ? await filed(now) : 'no zip');
  writeFileSync(join(directory, 'before.zip'), await filed(then));
  const args = ['visits', '--now', 'now.zip', '--before', 'before.zip'];
  return commandLine([visitsCommand], directory, args);
}

async function filed(document: SessionDocument): Promise<Uint8Array> {
  const { signal } = new AbortController();
  const options = { signal, onProgress: () => undefined, savedAt: '2030-01-01T00:00:00.000Z' };
  const { held, store } = memoryStore();
  for (const { captureId } of document.takes) held.captures.set(captureId, new Float32Array(9));
  const blob = await writeSessionFile(document, store, options);
  if (isTrouble(blob)) throw new Error(blob.sentence);
  return new Uint8Array(await blob.arrayBuffer());
}
