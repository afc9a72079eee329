import { msg } from '@lit/localize';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { wavPieces, type FrameSource } from '../../wav/write-wav';
import type { SessionDocument } from '../document';
import type { SessionStore } from '../session-store';
import { soundEntryName, textName } from './check-entries';
import { mostFileBytes, mostSoundBytes, mostTextBytes } from './file-limits';
import { breathe } from '../../breathe';
import { fileStopped } from './file-trouble';
import { capturesOf, type FiledCapture, type SessionFile } from './session-file';

export interface WriteOptions {
  readonly savedAt: string;
  readonly signal: AbortSignal;
  /** From 0 to 1. */
  readonly onProgress: (progress: number) => void;
}

/**
 * A session with all its recordings as one file: a ZIP of captures/1.wav … and session.json. The
 * recordings are read and written one after another, so that never more than one is in memory
 * besides the file; those the store has lost or cannot read are named as missing. A Trouble when it
 * is too large for such a file, or the signal was aborted.
 */
export async function writeSessionFile(
  document: SessionDocument,
  store: Pick<SessionStore, 'loadCapture'>,
  { savedAt, signal, onProgress }: WriteOptions,
): Promise<Blob | Trouble> {
  const packer = createPacker();
  const named = capturesOf(document);
  const captures: FiledCapture[] = [];
  const missing: string[] = [];
  for (const [index, { id, sampleRate }] of named.entries()) {
    onProgress(index / named.length);
    await breathe();
    if (signal.aborted) return fileStopped();
    const samples = await store.loadCapture(id);
    if (samples === null || isTrouble(samples) || samples.length === 0) {
      missing.push(id);
      continue;
    }
    if (4 * samples.length + 100 > mostSoundBytes) return tooLarge();
    const file = soundEntryName(captures.length + 1);
    const stopped = await packSound(packer, file, samples, Math.round(sampleRate), signal);
    if (stopped) return stopped;
    captures.push({ id, file, frames: samples.length });
    if (packer.bytes > mostFileBytes / 2) return tooLarge();
  }
  const content: SessionFile = {
    format: 'leadline-session-file',
    version: 1,
    savedAt,
    captures,
    missing,
    session: document,
  };
  const text = new TextEncoder().encode(JSON.stringify(content));
  if (text.length > mostTextBytes) return tooLarge();
  await packText(packer, text);
  if (signal.aborted) return fileStopped();
  onProgress(1);
  return packer.finish();
}

/** Bytes after which the screen may draw. */
const breathBytes = 2 ** 20;
/** The same in every file, whatever the clock says: a ZIP knows no time before 1980. */
const mtime = new Date(2000, 0, 1, 12);

interface Packer {
  readonly zip: Zip;
  readonly bytes: number;
  /** The whole file; rejects with what went wrong on the way. */
  finish(): Promise<Blob>;
}

function createPacker(): Packer {
  let pieces: BlobPart[] = [];
  let bytes = 0;
  let failure: Error | null = null;
  const zip = new Zip((error, piece) => {
    if (error) failure ??= error;
    else {
      // The packer's pieces lie in plain buffers, never in shared ones.
      pieces.push(piece as Uint8Array<ArrayBuffer>);
      bytes += piece.length;
    }
    // What is packed is handed to the browser, which may keep it on disk.
    if (pieces.length > 256) pieces = [new Blob(pieces)];
  });
  return {
    zip,
    get bytes() {
      return bytes;
    },
    finish() {
      zip.end();
      if (failure) return Promise.reject(failure);
      return Promise.resolve(new Blob(pieces, { type: 'application/zip' }));
    },
  };
}

async function packSound(
  { zip }: Packer,
  name: string,
  samples: Float32Array,
  sampleRate: number,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const entry = Object.assign(new ZipPassThrough(name), { mtime });
  zip.add(entry);
  const frames = samples.length;
  const spec = { channelCount: 1, frames, sampleRate, depth: 'float', channelMask: 0 } as const;
  const source: FrameSource = (_, start, into) =>
    into.set(samples.subarray(start, start + into.length));
  let unseen = 0;
  for (const piece of wavPieces(spec, source)) {
    entry.push(piece);
    unseen += piece.length;
    if (unseen < breathBytes) continue;
    unseen = 0;
    await breathe();
    if (signal.aborted) return fileStopped();
  }
  entry.push(new Uint8Array(0), true);
  return null;
}

async function packText({ zip }: Packer, text: Uint8Array): Promise<void> {
  const entry = Object.assign(new ZipDeflate(textName, { level: 6 }), { mtime });
  zip.add(entry);
  for (let at = 0; at < text.length; at += breathBytes / 4) {
    entry.push(text.slice(at, at + breathBytes / 4));
    await breathe();
  }
  entry.push(new Uint8Array(0), true);
}

const tooLarge = () =>
  trouble(
    'failed',
    msg(
      'This session is too large for one file. Discard takes you no longer need, or duplicate it and discard half of the takes in each.',
    ),
  );
