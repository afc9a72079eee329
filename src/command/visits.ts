import type { SessionDocument } from '../session/document';
import { readSessionFile } from '../session/file/read-session-file';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { compareVisits } from '../visits/compare-visits';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { inFile, readInputFile } from './input-files';

/** Holds a session file against an earlier one of the same system. */
export const visitsCommand: Command = {
  name: 'visits',
  summary: 'Holds a session against an earlier one of the same system: what moved, what drifted.',
  options: [
    { name: 'now', value: 'FILE', about: 'session file of this visit', required: true },
    { name: 'before', value: 'FILE', about: 'session file of the earlier visit', required: true },
  ],
  notes: [
    'Prints a finding per thing: "as it was", "changed" with by how much, or "cannot tell" with what\nwould settle it. Session files are those that the app saves; neither is changed.',
    'Levels and distances count between speakers only: a gain and the tape of one speaker move all.',
  ],
  run: compare,
};

async function compare(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const now = await readSession(given(options, 'now'), io);
  if (isTrouble(now)) return now;
  const before = await readSession(given(options, 'before'), io);
  if (isTrouble(before)) return before;
  try {
    return compareVisits(now, before);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return trouble(
      'bad-file',
      `These sessions cannot be compared, because one contradicts itself: ${error.message}. Save both again where they were made.`,
    );
  }
}

/** The session of a file; a Trouble names the file. Its recordings are left where they are. */
async function readSession(path: string, io: CommandIo): Promise<SessionDocument | Trouble> {
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const opened = await readSessionFile(new Blob([Uint8Array.from(file.bytes)]), io.signal);
  return isTrouble(opened) ? inFile(path, opened) : opened.document;
}
