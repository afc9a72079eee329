import { msg, str } from '@lit/localize';
import { parseJson, type FileKind } from '../../schema/parse-json';
import { isTrouble, type Trouble } from '../../trouble';
import { readWav } from '../../wav/read-wav';
import type { SessionDocument } from '../document';
import { parseSession } from '../shelf/parse-session';
import { checkEntries, textName } from './check-entries';
import { refuseFile } from './file-trouble';
import { capturesOf, sessionFileSchema, type FiledCapture, type SessionFile } from './session-file';
import { unpackEntry } from './unpack-entry';
import { readZipDirectory, type ZipEntry } from './zip-directory';

/** A session file whose session was read and agrees with its directory; its sound is not yet. */
export interface OpenedFile {
  readonly document: SessionDocument;
  readonly captures: readonly FiledCapture[];
  /** Unpacks one of its captures. */
  load(capture: FiledCapture): Promise<Float32Array | Trouble>;
}

const kind: FileKind = {
  get name() {
    return msg('session file');
  },
  format: 'leadline-session-file',
  versions: [1],
  get advice() {
    return msg('Save it again where it was made, with this version of Leadline.');
  },
};

/**
 * Reads the session of a session file and checks that every entry is one of its recordings. Never
 * throws for what is in the file: what cannot be trusted is a Trouble that says what is wrong.
 */
export async function readSessionFile(
  file: Blob,
  signal: AbortSignal,
): Promise<OpenedFile | Trouble> {
  const checked = await guarded(() => readChecked(file, signal));
  if (isTrouble(checked)) return checked;
  const { document, captures, entries } = checked;
  return {
    document,
    captures,
    load: (capture) => guarded(() => loadSound(file, capture, entries, signal)),
  };
}

interface Checked {
  readonly document: SessionDocument;
  readonly captures: readonly FiledCapture[];
  readonly entries: ReadonlyMap<string, ZipEntry>;
}

async function readChecked(file: Blob, signal: AbortSignal): Promise<Checked | Trouble> {
  const directory = await readZipDirectory(file);
  if (isTrouble(directory)) return directory;
  const refused = checkEntries(directory, file.size);
  if (refused) return refused;
  const entries = new Map(directory.map((entry) => [entry.name, entry]));
  const textEntry = entries.get(textName);
  if (!textEntry) return refuseFile(msg(str`it has no ${textName}`));
  const bytes = await unpackEntry(file, textEntry, signal);
  if (isTrouble(bytes)) return bytes;
  const content = parseJson<SessionFile>(new TextDecoder().decode(bytes), kind, sessionFileSchema);
  if (isTrouble(content)) return content;
  const parsed = parseSession(content.session);
  if (!('document' in parsed)) {
    if (!parsed.newer) return refuseFile(msg(str`its session is damaged (${parsed.why})`));
    return refuseFile(parsed.why, msg('Reload the page to get that version.'));
  }
  const { document } = parsed;
  const finding = contradiction(document, content, entries);
  return finding ? refuseFile(finding) : { document, captures: content.captures, entries };
}

/** Whether session, list of recordings and entries say the same; null when they do. */
function contradiction(
  document: SessionDocument,
  { captures, missing }: SessionFile,
  entries: ReadonlyMap<string, ZipEntry>,
): string | null {
  const named = new Set(capturesOf(document).map(({ id }) => id));
  const told = [...captures.map(({ id }) => id), ...missing];
  const files = captures.map(({ file }) => file);
  const isListed = new Set(told).size === told.length && new Set(files).size === files.length;
  if (!isListed) return msg('it lists a recording twice');
  if (told.some((id) => !named.has(id))) return msg('it holds a recording that no take names');
  if (told.length < named.size) return msg('it lacks a recording that a take names');
  const absent = files.find((name) => name === textName || !entries.has(name));
  if (absent !== undefined) return msg(str`its recording ${absent.slice(0, 60)} is not in it`);
  const unlisted = [...entries.keys()].find((name) => name !== textName && !files.includes(name));
  return unlisted === undefined ? null : msg(str`it holds ${unlisted}, which it does not list`);
}

/** What was found, without the last sentence and its stop: what to do with a file is said of it whole. */
function withoutAdvice(sentence: string): string {
  return sentence.replace(/\.(\s+[^.]*\.)?$/u, '');
}

async function loadSound(
  file: Blob,
  { file: name, frames }: FiledCapture,
  entries: ReadonlyMap<string, ZipEntry>,
  signal: AbortSignal,
): Promise<Float32Array | Trouble> {
  const entry = entries.get(name);
  if (!entry) return refuseFile(msg(str`its recording ${name} is not in it`));
  const bytes = await unpackEntry(file, entry, signal);
  if (isTrouble(bytes)) return bytes;
  const wav = readWav(bytes);
  if (isTrouble(wav)) {
    return refuseFile(msg(str`its recording ${name} is damaged. ${withoutAdvice(wav.sentence)}`));
  }
  const [samples] = wav.channels;
  const fits = wav.channels.length === 1 && wav.coding === 'float' && wav.bits === 32;
  if (!samples || !fits)
    return refuseFile(msg(str`its recording ${name} is not one channel of 32-bit float`));
  return samples.length === frames
    ? samples
    : refuseFile(
        msg(str`its recording ${name} has ${samples.length} samples and should have ${frames}`),
      );
}

async function guarded<T>(work: () => Promise<T | Trouble>): Promise<T | Trouble> {
  try {
    return await work();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refuseFile(
      msg(str`it cannot be read (${why})`),
      msg('Copy the file again, or choose another.'),
    );
  }
}
