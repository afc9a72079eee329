import { bytesPerSample, type WavSpec } from './wav-file';

/** Format tags of the RIFF WAVE format. */
export const pcmTag = 1;
export const floatTag = 3;
export const extensibleTag = 0xfffe;
/** Bytes 2 … 15 of every sub-format GUID that stands for a format tag. */
export const subFormatTail = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

/**
 * The bytes of a WAV before its first sample: RIFF, fmt, fact unless plain PCM, data.
 * WAVE_FORMAT_EXTENSIBLE beyond 2 channels or 16 bits. Throws RangeError for a spec that no WAV
 * can hold. Source: Multimedia Programming Interface 1.0 (1991) and its WAVE_FORMAT_EXTENSIBLE
 * addition, from memory.
 */
export function wavHeader(spec: WavSpec): Uint8Array<ArrayBuffer> {
  checkSpec(spec);
  const { channelCount, frames, sampleRate, depth, channelMask } = spec;
  const sampleBytes = bytesPerSample(depth);
  const frameBytes = channelCount * sampleBytes;
  const extensible = channelCount > 2 || sampleBytes > 2;
  const tag = depth === 'float' ? floatTag : pcmTag;
  const headerBytes = extensible ? 80 : 44;
  const dataBytes = frames * frameBytes;
  const bytes = new Uint8Array(headerBytes);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const id = (text: string): void => {
    for (const letter of text) view.setUint8(at++, letter.charCodeAt(0));
  };
  const u16 = (value: number): void => {
    view.setUint16(at, value, true);
    at += 2;
  };
  const u32 = (value: number): void => {
    view.setUint32(at, value, true);
    at += 4;
  };
  id('RIFF');
  u32(headerBytes - 8 + dataBytes + (dataBytes % 2));
  id('WAVE');
  id('fmt ');
  u32(extensible ? 40 : 16);
  u16(extensible ? extensibleTag : tag);
  u16(channelCount);
  u32(sampleRate);
  u32(sampleRate * frameBytes);
  u16(frameBytes);
  u16(8 * sampleBytes);
  if (extensible) {
    u16(22);
    u16(8 * sampleBytes);
    u32(channelMask);
    u16(tag);
    for (const byte of subFormatTail) view.setUint8(at++, byte);
    id('fact');
    u32(4);
    u32(frames);
  }
  id('data');
  u32(dataBytes);
  return bytes;
}

function checkSpec(spec: WavSpec): void {
  const { channelCount, frames, sampleRate, depth, channelMask } = spec;
  requireWhole('channelCount', channelCount, 1, 65535);
  requireWhole('frames', frames, 0, 2 ** 32 - 1);
  requireWhole('sampleRate', sampleRate, 1, 2 ** 32 - 1);
  requireWhole('channelMask', channelMask, 0, 2 ** 32 - 1);
  const frameBytes = channelCount * bytesPerSample(depth);
  requireWhole('bytes per frame', frameBytes, 1, 65535);
  requireWhole('bytes per second', frameBytes * sampleRate, 1, 2 ** 32 - 1);
  requireWhole('bytes of samples', frameBytes * frames, 0, 2 ** 32 - 1 - 80);
  const positions = channelMask.toString(2).replaceAll('0', '').length;
  if (positions > channelCount) {
    const mask = `0x${channelMask.toString(16)}`;
    throw new RangeError(`channelMask ${mask} names ${positions} of ${channelCount} channels`);
  }
}

function requireWhole(name: string, value: number, low: number, high: number): void {
  if (!Number.isInteger(value) || value < low || value > high) {
    throw new RangeError(`${name} must be whole, ${low} to ${high}, got ${value}`);
  }
}
