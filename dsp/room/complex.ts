/** A complex number as [re, im]. */
export type Complex = readonly [number, number];

export function multiply([a, b]: Complex, [c, d]: Complex): Complex {
  return [a * c - b * d, a * d + b * c];
}

export function divide([a, b]: Complex, [c, d]: Complex): Complex {
  const power = c * c + d * d;
  return [(a * c + b * d) / power, (b * c - a * d) / power];
}

/** |z|. */
export function magnitude([a, b]: Complex): number {
  return Math.hypot(a, b);
}
