/** A second-order section: (b0 + b1/z + b2/z²) / (1 + a1/z + a2/z²). */
export interface Section {
  readonly b: readonly [number, number, number];
  readonly a: readonly [number, number];
}

/**
 * A Butterworth of a processor as its signal chip has it: analogue poles in pairs, brought to
 * samples by the bilinear transform at its own frequency. Source: Butterworth (1930); Oppenheim
 * and Schafer, Discrete-Time Signal Processing, section 7.2 (from memory).
 */
export function butterworth(
  kind: 'low-pass' | 'high-pass',
  order: number,
  hz: number,
  sampleRate: number,
): Section[] {
  const w = Math.tan((Math.PI * hz) / sampleRate);
  const sections: Section[] = [];
  for (let k = 1; k <= Math.floor(order / 2); k++) {
    const damping = 2 * Math.sin(((2 * k - 1) * Math.PI) / (2 * order));
    const whole = 1 + damping * w + w * w;
    const b: Section['b'] = kind === 'low-pass' ? [w * w, 2 * w * w, w * w] : [1, -2, 1];
    sections.push({
      b: [b[0] / whole, b[1] / whole, b[2] / whole],
      a: [(2 * (w * w - 1)) / whole, (1 - damping * w + w * w) / whole],
    });
  }
  if (order % 2 === 1) {
    const b: Section['b'] = kind === 'low-pass' ? [w, w, 0] : [1, -1, 0];
    sections.push({
      b: [b[0] / (1 + w), b[1] / (1 + w), 0],
      a: [(w - 1) / (1 + w), 0],
    });
  }
  return sections;
}

/** Two Butterworths of half the order, one after the other (Linkwitz, JAES 24, 1976). */
export function linkwitzRiley(
  kind: 'low-pass' | 'high-pass',
  order: number,
  hz: number,
  sampleRate: number,
): Section[] {
  const half = butterworth(kind, order / 2, hz, sampleRate);
  return [...half, ...half];
}

/** A band of an equaliser, of the W3C note "Audio EQ Cookbook": peaking, with its quality factor. */
export function equaliserBand(
  hz: number,
  gainDb: number,
  quality: number,
  sampleRate: number,
): Section {
  const root = 10 ** (gainDb / 40);
  const turn = (2 * Math.PI * hz) / sampleRate;
  const alpha = Math.sin(turn) / (2 * quality);
  const whole = 1 + alpha / root;
  const middle = (-2 * Math.cos(turn)) / whole;
  return {
    b: [(1 + alpha * root) / whole, middle, (1 - alpha * root) / whole],
    a: [middle, (1 - alpha / root) / whole],
  };
}

/** A signal through sections one after another, as long as it was. */
export function filtered(signal: Float64Array, sections: readonly Section[]): Float64Array {
  const out = signal.slice();
  for (const { b, a } of sections) {
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let n = 0; n < out.length; n++) {
      const x = out[n] ?? 0;
      const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
      [x2, x1, y2, y1] = [x1, x, y1, y];
      out[n] = y;
    }
  }
  return out;
}
