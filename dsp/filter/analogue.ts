import { divide, multiply, one, type Complex } from './complex';

/** A high-pass or low-pass as a processor names it. */
export interface FilterSpec {
  readonly family: 'butterworth' | 'linkwitz-riley';
  readonly kind: 'low-pass' | 'high-pass';
  /** 6 dB per octave each; Linkwitz-Riley has even orders only. */
  readonly order: number;
  /** −3 dB of a Butterworth, −6 dB of a Linkwitz-Riley. */
  readonly cutoffHz: number;
}

/** (b2 s² + b1 s + b0)/(a2 s² + a1 s + a0) with s in units of the cutoff. */
export interface AnalogueSection {
  readonly b: readonly [b2: number, b1: number, b0: number];
  readonly a: readonly [a2: number, a1: number, a0: number];
}

const highestOrder = 16;

/**
 * First- and second-order sections of a filter. Butterworth of order n: 1/(s² + 2 sin(θ) s + 1)
 * with θ = (2k − 1)π/2n, and 1/(s + 1) for odd n; Linkwitz-Riley of order 2n: Butterworth n twice.
 * A high-pass has s for 1/s. Throws RangeError for an order that is not whole, odd for
 * Linkwitz-Riley, below 1 or above 16, or a cutoff that is not positive.
 * Source: Butterworth (1930); Linkwitz, JAES 24 (1976).
 */
export function analogueSections(spec: FilterSpec): readonly AnalogueSection[] {
  const { family, order, cutoffHz, kind } = spec;
  if (!Number.isInteger(order) || order < 1 || order > highestOrder) {
    throw new RangeError(`order must be whole, 1 to ${highestOrder}, got ${order}`);
  }
  if (!(cutoffHz > 0 && cutoffHz < Infinity)) {
    throw new RangeError(`cutoffHz must be positive, got ${cutoffHz}`);
  }
  if (family === 'butterworth') return butterworth(order, kind);
  if (order % 2 !== 0) {
    throw new RangeError(`a Linkwitz-Riley filter has an even order, got ${order}`);
  }
  const half = butterworth(order / 2, kind);
  return [...half, ...half];
}

/**
 * Complex response of the analogue filter at `hz`, 0 or more; a Linkwitz-Riley pair of order 2, 6,
 * 10 … sums flat only with one side inverted, which is left to the caller.
 */
export function filterResponse(spec: FilterSpec, hz: number): Complex {
  if (!(hz >= 0 && hz < Infinity)) throw new RangeError(`hz must not be negative, got ${hz}`);
  const w = hz / spec.cutoffHz;
  return analogueSections(spec).reduce((h, { b, a }) => {
    const top = { re: b[2] - b[0] * w * w, im: b[1] * w };
    const bottom = { re: a[2] - a[0] * w * w, im: a[1] * w };
    return multiply(h, divide(top, bottom));
  }, one);
}

function butterworth(order: number, kind: FilterSpec['kind']): AnalogueSection[] {
  const sections: AnalogueSection[] = [];
  for (let k = 1; k <= order / 2; k++) {
    const damping = 2 * Math.sin(((2 * k - 1) * Math.PI) / (2 * order));
    sections.push({ b: kind === 'low-pass' ? [0, 0, 1] : [1, 0, 0], a: [1, damping, 1] });
  }
  if (order % 2 === 1) {
    sections.push({ b: kind === 'low-pass' ? [0, 0, 1] : [0, 1, 0], a: [0, 1, 1] });
  }
  return sections;
}
