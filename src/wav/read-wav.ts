import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { decodeFrames } from './decode-frames';
import { riffChunks, tagAt, type RiffChunk } from './riff-chunks';
import type { WavFile } from './wav-file';
import { readFormat } from './wav-format';

/** Most samples of all channels together: 93 minutes of two channels at 48 kHz. */
const longest = 2 ** 29;

/** Beginnings of other kinds of file that may be taken for a WAV. */
const others = (): readonly (readonly [string, string])[] => [
  ['RIFX', msg('a big-endian RIFX file')],
  ['FORM', msg('an AIFF file')],
  ['fLaC', msg('a FLAC file')],
  ['OggS', msg('an Ogg file')],
  ['ID3', msg('an MP3 file')],
  ['caff', msg('a CAF file')],
  ['riff', msg('a Wave64 file')],
  ['....ftyp', msg('an MP4 file')],
  ['PK..', msg('a ZIP archive')],
];

/**
 * Reads a WAV: 8 to 32-bit integers, 32 and 64-bit floats, plain or extensible, RIFF, RF64 or BW64,
 * finished or streamed. Never throws: what cannot be trusted is a Trouble that says what is wrong,
 * where, and what to do.
 */
export function readWav(bytes: Uint8Array): WavFile | Trouble {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const stranger = refuseStranger(view);
  if (stranger) return stranger;
  let fmt: RiffChunk | null = null;
  let data: RiffChunk | null = null;
  for (const chunk of riffChunks(view)) {
    if (chunk.id === 'fmt ') fmt ??= chunk;
    if (chunk.id === 'data') data ??= chunk;
    if (fmt && data) break;
  }
  if (!fmt || !data)
    return missing(fmt ? msg('sound (no data chunk)') : msg('format (no fmt chunk)'), view);
  const format = readFormat(view, fmt);
  if (isTrouble(format)) return format;
  if (!data.streamed && data.size < data.claimed) return truncated(data);
  const frames = Math.floor(data.size / (format.channelCount * format.width));
  if (frames === 0) {
    const sentence = msg(
      str`This WAV holds no sound: its data chunk at byte ${data.start} is empty.`,
    );
    return trouble('bad-wav', msg(str`${sentence} Record the take again.`));
  }
  if (frames * format.channelCount > longest) {
    const minutes = Math.round(frames / format.sampleRate / 60);
    const sentence = msg(
      str`This WAV is too long to be a take: ${minutes} minutes of ${format.channelCount} channels.`,
    );
    return trouble('bad-wav', msg(str`${sentence} Cut it to the take, or choose another file.`));
  }
  const body = new DataView(view.buffer, view.byteOffset + data.start, data.size);
  const channels = decodeFrames(body, format, frames);
  const { coding, sampleRate, bits, channelMask } = format;
  if (coding === 'float') {
    const broken = findBroken(channels, sampleRate);
    if (broken) return broken;
  }
  return { sampleRate, coding, bits, channelMask, frames, channels };
}

function refuseStranger(view: DataView): Trouble | null {
  if (view.byteLength === 0)
    return trouble('bad-wav', msg('This file is empty. Record the take again.'));
  const riff = ['RIFF', 'RF64', 'BW64'].includes(tagAt(view, 0));
  if (riff && tagAt(view, 8) === 'WAVE') return null;
  const start = tagAt(view, 0) + tagAt(view, 4);
  const kind = others().find(([mark]) =>
    [...mark].every((letter, i) => letter === '.' || letter === start[i]),
  )?.[1];
  const found = kind
    ? msg(str`it is ${kind}`)
    : msg(str`it begins with "${start}" where "RIFF" should stand`);
  return trouble(
    'bad-wav',
    msg(
      str`This is not a WAV file: ${found} (byte 0). Choose the recording, or save it again as WAV.`,
    ),
  );
}

function missing(what: string, view: DataView): Trouble {
  const sentence = msg(str`This WAV ends at byte ${view.byteLength} without its ${what}.`);
  return trouble(
    'bad-wav',
    msg(str`${sentence} It is cut off or damaged: copy or record it again.`),
  );
}

function truncated(data: RiffChunk): Trouble {
  const { claimed, size, start } = data;
  const lost = msg(
    str`${claimed} bytes of sound from byte ${start} on, and only ${size} are there`,
  );
  return trouble(
    'bad-wav',
    msg(str`This WAV is cut off: it claims ${lost}. Copy or record it again.`),
  );
}

/** The earliest sample that is no finite number. */
function findBroken(channels: readonly Float32Array[], sampleRate: number): Trouble | null {
  const firsts = channels.map((samples) => samples.findIndex((value) => !Number.isFinite(value)));
  const found = firsts.filter((first) => first >= 0);
  if (found.length === 0) return null;
  const first = found.reduce((a, b) => Math.min(a, b));
  const channel = firsts.indexOf(first) + 1;
  const place = msg(
    str`sample ${first} (${withUnit(numberText(first / sampleRate, 3), 's')}) of channel ${channel}`,
  );
  const advice = msg('Export the recording again, as 24-bit WAV.');
  return trouble(
    'not-a-number',
    msg(str`This WAV is damaged: ${place} is not a finite number. ${advice}`),
  );
}
