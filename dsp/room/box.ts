import { sectionsAt, type Complex, type Section } from './section';

/** A closed box: s²/(s² + s/Q + 1) with s in units of its resonance. */
export interface SealedBox {
  readonly kind: 'sealed';
  readonly resonanceHz: number;
  readonly q: number;
}

/** A vented box: s⁴/(s⁴ + a1 s³ + a2 s² + a3 s + 1) with s in units of resonanceHz. */
export interface VentedBox {
  readonly kind: 'vented';
  readonly resonanceHz: number;
  readonly coefficients: readonly [a1: number, a2: number, a3: number];
}

export type Box = SealedBox | VentedBox;

/** A box's far field alone, 1 well above resonance. Source: Small, JAES 1972, 1973. */
export function boxSection(box: Box): Section {
  const hz = box.resonanceHz;
  if (box.kind === 'sealed') return { hz, above: [0, 0, 1], below: [1, 1 / box.q, 1] };
  const [a1, a2, a3] = box.coefficients;
  return { hz, above: [0, 0, 0, 0, 1], below: [1, a3, a2, a1, 1] };
}

/** Complex far-field response of a box alone. */
export function boxResponse(box: Box, hz: number): Complex {
  return sectionsAt([boxSection(box)], hz);
}

/**
 * Response of a vented box's cone alone: s²(s² + (a3/a1)(1 − loss)) over the same denominator,
 * with the null at the tuning. A sealed box has no other part. Source: Keele, JAES 1974.
 */
export function coneResponse(box: Box, hz: number, loss = 0): Complex {
  const section = boxSection(box);
  if (box.kind === 'sealed') return sectionsAt([section], hz);
  const [a1, , a3] = box.coefficients;
  return sectionsAt([{ ...section, above: [0, 0, (a3 / a1) * (1 - loss), 0, 1] }], hz);
}

/**
 * Lossy vented box from its driver: resonance fs, Qt, h = fb/fs, α = Vas/Vb, box loss QL.
 * a1 = (QL + h Qt)/(√h QL Qt), a2 = (h + (α + 1 + h²) QL Qt)/(h QL Qt), a3 = (h QL + Qt)/(√h QL Qt).
 * Source: Small, JAES 1973.
 */
export function ventedFromDriver(driver: {
  readonly driverHz: number;
  readonly qt: number;
  readonly h: number;
  readonly alpha: number;
  readonly ql: number;
}): VentedBox {
  const { driverHz, qt, h, alpha, ql } = driver;
  for (const [name, value] of Object.entries(driver)) {
    if (!(value > 0)) throw new RangeError(`${name} must be positive, got ${value}`);
  }
  const root = Math.sqrt(h);
  return {
    kind: 'vented',
    resonanceHz: driverHz * root,
    coefficients: [
      (ql + h * qt) / (root * ql * qt),
      (h + (alpha + 1 + h * h) * ql * qt) / (h * ql * qt),
      (h * ql + qt) / (root * ql * qt),
    ],
  };
}

/**
 * Vented alignment on a one-parameter path, t from −1 to 1: below 0 towards ripple (Butterworth-4
 * poles with their real part × (1 + 0.45 t)), 0 maximally flat, above 0 towards early, gentle
 * roll-off (a2 = a3²/2, a1 = (a2² + 2)/(2 a3), a1² − a3² = 4 t). Throws RangeError outside.
 */
export function ventedAlignment(resonanceHz: number, t: number): VentedBox {
  if (!(t >= -1 && t <= 1)) throw new RangeError(`t must lie between -1 and 1, got ${t}`);
  const coefficients = t <= 0 ? rippled(1 + 0.45 * t) : gentle(4 * t);
  return { kind: 'vented', resonanceHz, coefficients };
}

/** Two pole pairs p² + b p + c of the low-pass; s → 1/s reverses the polynomial. */
function rippled(squeeze: number): [number, number, number] {
  const pair = (angle: number): [number, number] => {
    const real = Math.cos(angle) * squeeze;
    return [2 * real, real * real + Math.sin(angle) ** 2];
  };
  const [b1, c1] = pair(Math.PI / 8);
  const [b2, c2] = pair((3 * Math.PI) / 8);
  const last = c1 * c2;
  const scale = last ** 0.25;
  const cubic = (b1 * c2 + b2 * c1) / last;
  const square = (c1 + c2 + b1 * b2) / last;
  const linear = (b1 + b2) / last;
  // s⁴ + cubic s³ + square s² + linear s + 1/last, brought to a constant term of one.
  return [cubic * scale, square * scale ** 2, linear * scale ** 3];
}

/** Solves a1² − a3² = difference for a3 by bisection; the left side grows with a3. */
function gentle(difference: number): [number, number, number] {
  const of = (a3: number): [number, number, number] => {
    const a2 = (a3 * a3) / 2;
    return [(a2 * a2 + 2) / (2 * a3), a2, a3];
  };
  let low = Math.sqrt(2 * (2 + Math.SQRT2));
  let high = low * 4;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const [a1] = of(middle);
    if (a1 * a1 - middle * middle > difference) high = middle;
    else low = middle;
  }
  return of((low + high) / 2);
}
