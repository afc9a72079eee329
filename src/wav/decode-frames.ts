import type { WavFormat } from './wav-format';

/**
 * Takes interleaved little-endian frames apart into one array a channel. Integers are scaled so
 * that full scale is 1; 8-bit samples are unsigned. Samples narrower than their bytes are taken as
 * left-justified, as WAVE_FORMAT_EXTENSIBLE asks.
 */
export function decodeFrames(view: DataView, format: WavFormat, frames: number): Float32Array[] {
  const { channelCount, width } = format;
  const sampleAt = sampleReader(view, format);
  const stride = channelCount * width;
  return Array.from({ length: channelCount }, (_, channel) => {
    const samples = new Float32Array(frames);
    let at = channel * width;
    for (let n = 0; n < frames; n++) {
      samples[n] = sampleAt(at);
      at += stride;
    }
    return samples;
  });
}

function sampleReader(view: DataView, { coding, width }: WavFormat): (at: number) => number {
  if (coding === 'float') {
    if (width === 8) return (at) => view.getFloat64(at, true);
    return (at) => view.getFloat32(at, true);
  }
  if (width === 1) return (at) => (view.getUint8(at) - 128) / 2 ** 7;
  if (width === 2) return (at) => view.getInt16(at, true) / 2 ** 15;
  if (width === 4) return (at) => view.getInt32(at, true) / 2 ** 31;
  return (at) => ((view.getInt8(at + 2) << 16) | view.getUint16(at, true)) / 2 ** 23;
}
