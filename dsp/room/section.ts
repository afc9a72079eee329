/** A complex number as [re, im]. */
export type Complex = readonly [number, number];

/** Σ n_k s^k / Σ d_k s^k with s = jf/hz, at most fourth order, lowest power first. */
export interface Section {
  readonly hz: number;
  readonly above: readonly number[];
  readonly below: readonly number[];
}

/** Product of all sections at a frequency. */
export function sectionsAt(sections: readonly Section[], hz: number): Complex {
  let re = 1;
  let im = 0;
  for (const section of sections) {
    const { above, below } = section;
    const w = hz / section.hz;
    const w2 = w * w;
    const a = (above[0] ?? 0) - (above[2] ?? 0) * w2 + (above[4] ?? 0) * w2 * w2;
    const b = w * ((above[1] ?? 0) - (above[3] ?? 0) * w2);
    const c = (below[0] ?? 0) - (below[2] ?? 0) * w2 + (below[4] ?? 0) * w2 * w2;
    const d = w * ((below[1] ?? 0) - (below[3] ?? 0) * w2);
    const power = c * c + d * d;
    const x = (a * c + b * d) / power;
    const y = (b * c - a * d) / power;
    const kept = re;
    re = re * x - im * y;
    im = kept * y + im * x;
  }
  return [re, im];
}

/** |z|. */
export function magnitude([re, im]: Complex): number {
  return Math.hypot(re, im);
}

/** Butterworth high-pass, second order. */
export function butterworthHigh(hz: number): Section {
  return { hz, above: [0, 0, 1], below: [1, Math.SQRT2, 1] };
}

/** Butterworth low-pass of second or fourth order. */
export function butterworthLow(hz: number, order: 2 | 4): Section {
  if (order === 2) return { hz, above: [1], below: [1, Math.SQRT2, 1] };
  const first = 2 * Math.cos(Math.PI / 8);
  const second = 2 * Math.cos((3 * Math.PI) / 8);
  const sum = first + second;
  return { hz, above: [1], below: [1, sum, 2 + first * second, sum, 1] };
}

/** Second-order peak: gain g at hz, (s² + s √g/q + 1)/(s² + s/(√g q) + 1). */
export function peak(hz: number, gainDb: number, q: number): Section {
  const root = 10 ** (gainDb / 40);
  return { hz, above: [1, root / q, 1], below: [1, 1 / (root * q), 1] };
}

/** All-pass that a Linkwitz-Riley-4 pair sums to. Source: Linkwitz, JAES 1976. */
export function crossoverAllPass(hz: number): Section {
  return { hz, above: [1, -Math.SQRT2, 1], below: [1, Math.SQRT2, 1] };
}
