import type { CaptureChunk } from './capture-message';

/** Microphone audio on one unbroken frame count. */
export interface AssembledCapture {
  readonly channels: readonly Float32Array[];
  /** Where frames never arrived and zeros stand instead. */
  readonly gaps: readonly { readonly atSample: number; readonly samples: number }[];
}

/**
 * Puts chunks where their frame count says, from `startFrame` on for `frames`; what never arrived
 * stays zero and is listed. Chunks come in order and do not overlap; parts outside are cut.
 */
export function assembleCapture(
  chunks: readonly CaptureChunk[],
  startFrame: number,
  frames: number,
): AssembledCapture {
  const count = Math.max(0, ...chunks.map((chunk) => chunk.channels.length));
  const channels = Array.from({ length: count }, () => new Float32Array(frames));
  const gaps: { atSample: number; samples: number }[] = [];
  let filled = 0;
  for (const chunk of chunks) {
    const at = chunk.frame - startFrame;
    const length = chunk.channels[0]?.length ?? 0;
    const from = Math.max(0, at);
    const to = Math.min(frames, at + length);
    if (to <= from) continue;
    if (from > filled) gaps.push({ atSample: filled, samples: from - filled });
    for (const [index, samples] of chunk.channels.entries()) {
      channels[index]?.set(samples.subarray(from - at, to - at), from);
    }
    filled = to;
  }
  if (filled < frames) gaps.push({ atSample: filled, samples: frames - filled });
  return { channels, gaps };
}
