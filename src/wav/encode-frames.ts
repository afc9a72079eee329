import { bytesPerSample, type WavDepth } from './wav-file';

/**
 * Writes one channel's samples into interleaved little-endian frames: sample n goes to byte
 * (n·channelCount + channel)·bytesPerSample. Integers are rounded and held at full scale; `dither`
 * (uniform 0 … 1) adds triangular noise of ±1 step first. Throws RangeError for a sample that is
 * not finite. Dither: Lipshitz, Wannamaker and Vanderkooy, JAES 1992, from memory.
 */
export function encodeChannel(
  samples: Float32Array,
  view: DataView,
  channel: number,
  channelCount: number,
  depth: WavDepth,
  dither?: () => number,
): void {
  const width = bytesPerSample(depth);
  const stride = channelCount * width;
  const put = depth === 'float' ? floatWriter(view) : integerWriter(view, depth, dither);
  let at = channel * width;
  for (const sample of samples) {
    if (!Number.isFinite(sample)) {
      const n = (at - channel * width) / stride;
      throw new RangeError(`sample ${n} of channel ${channel} must be finite, got ${sample}`);
    }
    put(at, sample);
    at += stride;
  }
}

type SampleWriter = (at: number, sample: number) => void;

function floatWriter(view: DataView): SampleWriter {
  return (at, sample) => view.setFloat32(at, sample, true);
}

function integerWriter(view: DataView, bits: 16 | 24 | 32, dither?: () => number): SampleWriter {
  const steps = 2 ** (bits - 1);
  const toStep = (sample: number): number => {
    const noise = dither ? dither() - dither() : 0;
    return Math.min(steps - 1, Math.max(-steps, Math.round(sample * steps + noise)));
  };
  if (bits === 16) return (at, sample) => view.setInt16(at, toStep(sample), true);
  if (bits === 32) return (at, sample) => view.setInt32(at, toStep(sample), true);
  return (at, sample) => {
    const value = toStep(sample);
    view.setUint16(at, value & 0xffff, true);
    view.setInt8(at + 2, value >> 16);
  };
}
