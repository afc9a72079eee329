export interface Complex {
  readonly re: number;
  readonly im: number;
}

export function complex(re: number, im: number): Complex {
  return { re, im };
}

export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** a/b; b must not be zero. */
export function divide(a: Complex, b: Complex): Complex {
  const d = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
}

/** |a|². */
export function squared(a: Complex): number {
  return a.re * a.re + a.im * a.im;
}
