import type { Weighting } from './weighting';
import { weightingSections } from './weighting-sections';

/**
 * Weights sound as it comes: each call takes the next stretch and gives it weighted, same length,
 * starting from rest. A sample that is not finite counts as silence. Accuracy and range of
 * sampleRate: see weightingSections. Source: IEC 61672-1:2013, 5.5 and annex E.
 */
export function createFrequencyWeighting(
  kind: Weighting,
  sampleRate: number,
): (samples: ArrayLike<number>) => Float64Array {
  const sections = weightingSections(kind, sampleRate).map((section) => ({
    ...section,
    s1: 0,
    s2: 0,
  }));
  return (samples) => {
    const out = new Float64Array(samples.length);
    for (let n = 0; n < out.length; n++) {
      const x = samples[n] ?? 0;
      out[n] = Number.isFinite(x) ? x : 0;
    }
    for (const section of sections) {
      const { b0, b1, b2, a1, a2 } = section;
      let { s1, s2 } = section;
      for (let n = 0; n < out.length; n++) {
        const x = out[n] ?? 0;
        const y = b0 * x + s1;
        s1 = b1 * x - a1 * y + s2;
        s2 = b2 * x - a2 * y;
        out[n] = y;
      }
      section.s1 = s1;
      section.s2 = s2;
    }
    return out;
  };
}
