/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const one: Complex = { re: 1, im: 0 };

/** a + b */
export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

/** a · b */
export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** a / b; throws RangeError when b is 0. */
export function divide(a: Complex, b: Complex): Complex {
  const scale = b.re * b.re + b.im * b.im;
  if (!(scale > 0)) throw new RangeError(`cannot divide by ${b.re} + ${b.im}i`);
  return {
    re: (a.re * b.re + a.im * b.im) / scale,
    im: (a.im * b.re - a.re * b.im) / scale,
  };
}

/** |a| */
export function magnitude(a: Complex): number {
  return Math.hypot(a.re, a.im);
}

/** Phase in radians, −π … π. */
export function phase(a: Complex): number {
  return Math.atan2(a.im, a.re);
}
