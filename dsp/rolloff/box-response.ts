import { complex, divide, multiply, type Complex } from './complex';

/**
 * Complex response of a high-pass at a frequency in Hz; 1 in the passband. With `growthHz` g it is
 * the response at s = 2π(g + jf): that of the impulse response under a window e^(−2πgt).
 */
export type HighPassResponse = (hz: number, growthHz?: number) => Complex;

/** D(s) = s⁴ + a1·s³ + a2·s² + a3·s + 1, s in units of 2π·f0. */
export interface VentedPolynomial {
  readonly a1: number;
  readonly a2: number;
  readonly a3: number;
}

/**
 * Closed box: s²/(s² + s/Q + 1), s = jf/f0.
 * `resonanceHz` > 0, `q` > 0; RangeError otherwise. Small, JAES 1972.
 */
export function sealedResponse(resonanceHz: number, q: number): HighPassResponse {
  requirePositive('resonanceHz', resonanceHz);
  requirePositive('q', q);
  return (hz, growthHz = 0) => {
    const s = complex(growthHz / resonanceHz, hz / resonanceHz);
    const s2 = multiply(s, s);
    return divide(s2, complex(s2.re + s.re / q + 1, s2.im + s.im / q));
  };
}

/**
 * Vented box s⁴/D(s), s = jf/f0, on the one-parameter line of alignments of ventedAlignment.
 * `f0Hz` = √(driver resonance · box tuning) > 0; `t` in −1 … 1; RangeError otherwise.
 */
export function ventedResponse(f0Hz: number, t: number): HighPassResponse {
  return polynomialResponse(f0Hz, ventedAlignment(t));
}

/** Fourth-order high-pass s⁴/D(s) with D given. `f0Hz` > 0, RangeError otherwise. */
export function polynomialResponse(f0Hz: number, d: VentedPolynomial): HighPassResponse {
  requirePositive('f0Hz', f0Hz);
  return (hz, growthHz = 0) => {
    const s = complex(growthHz / f0Hz, hz / f0Hz);
    const s2 = multiply(s, s);
    const s3 = multiply(s2, s);
    const s4 = multiply(s2, s2);
    const sum = (part: 're' | 'im'): number =>
      s4[part] + d.a1 * s3[part] + d.a2 * s2[part] + d.a3 * s[part];
    return divide(s4, complex(sum('re') + 1, sum('im')));
  };
}

/**
 * The cone of a vented box alone: s²·(s² + b)/D(s), where b = (box tuning/f0)².
 * A lossless box has b = a3/a1; losses fill the null: pass (a3/a1)(1 − κ), κ 0 … 0.4.
 * Small, JAES 1973.
 */
export function coneResponse(f0Hz: number, d: VentedPolynomial, b: number): HighPassResponse {
  const whole = polynomialResponse(f0Hz, d);
  return (hz) => {
    const { re, im } = whole(hz);
    const w2 = (hz / f0Hz) ** 2;
    const factor = w2 === 0 ? 0 : 1 - b / w2;
    return complex(re * factor, im * factor);
  };
}

/**
 * Vented alignments on one line: t = 0 is the fourth-order Butterworth; t > 0 the quasi-third-order
 * family |H|² = ω⁸/(ω⁸ + 4t·ω⁶ + 1); t < 0 Butterworth poles with real part × (1 + 0.45t), which
 * ripple in the Chebyshev manner. f3/f0 falls from 2.009 at t = 1 to 0.775 at t = −1.
 * `t` in −1 … 1, RangeError otherwise. Thiele, JAES 1971 (families); the line is our own.
 */
export function ventedAlignment(t: number): VentedPolynomial {
  if (!(t >= -1 && t <= 1)) throw new RangeError(`t must lie between −1 and 1, got ${t}`);
  return t > 0 ? quasiThirdOrder(t) : chebyshevLike(1 + 0.45 * t);
}

/** a2 = a3²/2, a1 = (a2² + 2)/(2·a3), a1² − a3² = 4t, by bisection on a3. */
function quasiThirdOrder(t: number): VentedPolynomial {
  const at = (a3: number): VentedPolynomial => {
    const a2 = (a3 * a3) / 2;
    return { a1: (a2 * a2 + 2) / (2 * a3), a2, a3 };
  };
  let low = 2.5;
  let high = 4;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const { a1, a3 } = at(middle);
    if (a1 * a1 - a3 * a3 < 4 * t) low = middle;
    else high = middle;
  }
  return at((low + high) / 2);
}

function chebyshevLike(damping: number): VentedPolynomial {
  const section = (angle: number): [number, number] => {
    const real = damping * Math.sin(angle);
    return [2 * real, real * real + Math.cos(angle) ** 2];
  };
  const [p1, q1] = section(Math.PI / 8);
  const [p2, q2] = section((3 * Math.PI) / 8);
  const b3 = p1 + p2;
  const b2 = q1 + q2 + p1 * p2;
  const b1 = p1 * q2 + p2 * q1;
  const g = (q1 * q2) ** -0.25;
  return { a1: b1 * g ** 3, a2: b2 * g * g, a3: b3 * g };
}

/** Closed box from driver and volume: fc = fs·√(1 + α), Qtc = Qts·√(1 + α), α = Vas/Vb. Small 1972. */
export function closedBox(
  driverHz: number,
  driverQ: number,
  complianceRatio: number,
): { readonly resonanceHz: number; readonly q: number } {
  requirePositive('driverHz', driverHz);
  requirePositive('driverQ', driverQ);
  requirePositive('complianceRatio', complianceRatio);
  const rise = Math.sqrt(1 + complianceRatio);
  return { resonanceHz: driverHz * rise, q: driverQ * rise };
}

/**
 * Lossless vented box from the driver: h = box tuning/driver resonance, α = Vas/Vb, total Q.
 * f0 = fs·√h, a1 = 1/(Q√h), a2 = (1 + α + h²)/h, a3 = √h/Q. Thiele 1971, Small 1973.
 */
export function ventedBox(
  driverHz: number,
  driverQ: number,
  complianceRatio: number,
  tuningRatio: number,
): { readonly f0Hz: number; readonly polynomial: VentedPolynomial } {
  requirePositive('driverHz', driverHz);
  requirePositive('driverQ', driverQ);
  requirePositive('complianceRatio', complianceRatio);
  requirePositive('tuningRatio', tuningRatio);
  const root = Math.sqrt(tuningRatio);
  return {
    f0Hz: driverHz * root,
    polynomial: {
      a1: 1 / (driverQ * root),
      a2: (1 + complianceRatio + tuningRatio * tuningRatio) / tuningRatio,
      a3: root / driverQ,
    },
  };
}

function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) {
    throw new RangeError(`${name} must be positive, got ${value}`);
  }
}
