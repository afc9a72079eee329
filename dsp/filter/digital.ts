import { analogueSections, type AnalogueSection, type FilterSpec } from './analogue';
import type { Biquad } from './biquad';

/**
 * Digital sections of a Butterworth or Linkwitz-Riley filter by the bilinear transform
 * s = (1 − z⁻¹)/(k(1 + z⁻¹)), k = tan(π·cutoffHz/sampleRate), so that the cutoff stays in place.
 * Throws RangeError unless 0 < cutoffHz < sampleRate/2, and for what analogueSections refuses.
 */
export function digitalSections(spec: FilterSpec, sampleRate: number): readonly Biquad[] {
  if (!(spec.cutoffHz < sampleRate / 2)) {
    throw new RangeError(`cutoffHz must lie between 0 and ${sampleRate / 2}, got ${spec.cutoffHz}`);
  }
  const k = Math.tan((Math.PI * spec.cutoffHz) / sampleRate);
  return analogueSections(spec).map((section) => transform(section, k));
}

function transform({ b, a }: AnalogueSection, k: number): Biquad {
  const firstOrder = b[0] === 0 && a[0] === 0;
  if (firstOrder) {
    const scale = 1 / (a[1] + a[2] * k);
    return {
      b0: (b[1] + b[2] * k) * scale,
      b1: (b[2] * k - b[1]) * scale,
      b2: 0,
      a1: (a[2] * k - a[1]) * scale,
      a2: 0,
    };
  }
  const scale = 1 / (a[0] + a[1] * k + a[2] * k * k);
  return {
    b0: (b[0] + b[1] * k + b[2] * k * k) * scale,
    b1: 2 * (b[2] * k * k - b[0]) * scale,
    b2: (b[0] - b[1] * k + b[2] * k * k) * scale,
    a1: 2 * (a[2] * k * k - a[0]) * scale,
    a2: (a[0] - a[1] * k + a[2] * k * k) * scale,
  };
}
