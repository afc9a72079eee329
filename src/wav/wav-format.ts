import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { RiffChunk } from './riff-chunks';
import { extensibleTag, floatTag, pcmTag, subFormatTail } from './wav-header';

/** What the fmt chunk says. */
export interface WavFormat {
  readonly coding: 'integer' | 'float';
  readonly channelCount: number;
  readonly sampleRate: number;
  /** Bytes that one sample takes. */
  readonly width: number;
  readonly bits: number;
  readonly channelMask: number | null;
}

const codecs = () =>
  new Map([
    [0x02, msg('ADPCM')],
    [0x06, msg('A-law')],
    [0x07, msg('µ-law')],
    [0x11, msg('IMA ADPCM')],
    [0x31, msg('GSM 6.10')],
    [0x50, msg('MPEG audio')],
    [0x55, msg('MPEG layer 3')],
    [0x92, msg('IEC 61937')],
  ]);

/** Reads the fmt chunk; a Trouble names what is wrong and the byte it stands at. */
export function readFormat(view: DataView, chunk: RiffChunk): WavFormat | Trouble {
  const { start, size } = chunk;
  if (size < 16) {
    return bad(msg(str`its fmt chunk at byte ${start} has ${size} bytes where 16 are needed`));
  }
  const tag = view.getUint16(start, true);
  const channelCount = view.getUint16(start + 2, true);
  const sampleRate = view.getUint32(start + 4, true);
  const frameBytes = view.getUint16(start + 12, true);
  const said = view.getUint16(start + 14, true);
  const extended = tag === extensibleTag && size >= 40;
  if (tag === extensibleTag && !extended) {
    return bad(
      msg(str`its extensible fmt chunk at byte ${start} has ${size} bytes where 40 are needed`),
    );
  }
  if (extended && subFormatTail.some((byte, i) => view.getUint8(start + 26 + i) !== byte)) {
    return bad(msg(str`the sample format at byte ${start + 24} is none that WAV readers know`));
  }
  const code = extended ? view.getUint16(start + 24, true) : tag;
  if (code !== pcmTag && code !== floatTag) {
    const name = codecs().get(code) ?? msg(str`an unknown codec (number ${code})`);
    return bad(msg(str`its samples are coded as ${name} (byte ${extended ? start + 24 : start})`));
  }
  if (channelCount === 0) return bad(msg(str`it says it has no channels (byte ${start + 2})`));
  if (sampleRate === 0) return bad(msg(str`it gives its sample rate as 0 Hz (byte ${start + 4})`));
  const width = frameBytes / channelCount;
  const coding = code === floatTag ? 'float' : 'integer';
  const widths = coding === 'float' ? [4, 8] : [1, 2, 3, 4];
  if (!widths.includes(width) || said === 0 || said > 8 * width) {
    const sizes = msg(
      str`${said} bits a sample, ${channelCount} channels, ${frameBytes} bytes a frame`,
    );
    return bad(msg(str`its sizes do not fit together: ${sizes} (byte ${start + 12})`));
  }
  const valid = extended ? view.getUint16(start + 18, true) : said;
  const bits = valid > 0 && valid <= said ? valid : said;
  const channelMask = extended ? view.getUint32(start + 20, true) : null;
  return { coding, channelCount, sampleRate, width, bits, channelMask };
}

function bad(finding: string): Trouble {
  const advice = msg('Save the recording again as an uncompressed 24-bit WAV.');
  return trouble('bad-wav', msg(str`This WAV cannot be read: ${finding}. ${advice}`));
}
