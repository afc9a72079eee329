/**
 * Puts complex entries 0, 4, 8 … of `input` into the first quarter of `out`, 1, 5, 9 … into the
 * second, and so on; interleaved re, im, a whole number of fours.
 */
export function deal(input: Float64Array, out: Float64Array): void {
  const quarter = input.length / 4;
  const [second, third, fourth] = [quarter, 2 * quarter, 3 * quarter];
  for (let n = 0, at = 0; n < quarter; n += 2, at += 8) {
    out[n] = input[at] ?? 0;
    out[n + 1] = input[at + 1] ?? 0;
    out[second + n] = input[at + 2] ?? 0;
    out[second + n + 1] = input[at + 3] ?? 0;
    out[third + n] = input[at + 4] ?? 0;
    out[third + n + 1] = input[at + 5] ?? 0;
    out[fourth + n] = input[at + 6] ?? 0;
    out[fourth + n + 1] = input[at + 7] ?? 0;
  }
}

/** e^(−2πik/size) for the first quarter of k, interleaved re, im. */
export function quarterTurns(size: number): Float64Array {
  const turns = new Float64Array(size / 2);
  for (let k = 0; k < size / 4; k++) {
    turns[2 * k] = Math.cos((2 * Math.PI * k) / size);
    turns[2 * k + 1] = -Math.sin((2 * Math.PI * k) / size);
  }
  return turns;
}

/**
 * The transform of a signal from those of its quarters as deal gives them, one after the other in
 * `parts`: X(k + qM) = Σ_r e^(−2πirk/size) (−i)^(rq) F_r(k), k < M = size/4 (Cooley and Tukey, 1965).
 */
export function joinQuarters(parts: Float64Array, turns: Float64Array, out: Float64Array): void {
  const quarter = parts.length / 4;
  const [second, third, fourth] = [quarter, 2 * quarter, 3 * quarter];
  for (let k = 0; k < quarter; k += 2) {
    const cos = turns[k] ?? 0;
    const sin = turns[k + 1] ?? 0;
    const cos2 = cos * cos - sin * sin;
    const sin2 = 2 * cos * sin;
    const cos3 = cos2 * cos - sin2 * sin;
    const sin3 = cos2 * sin + sin2 * cos;
    const aRe = parts[k] ?? 0;
    const aIm = parts[k + 1] ?? 0;
    const b = parts[second + k] ?? 0;
    const bi = parts[second + k + 1] ?? 0;
    const bRe = b * cos - bi * sin;
    const bIm = b * sin + bi * cos;
    const c = parts[third + k] ?? 0;
    const ci = parts[third + k + 1] ?? 0;
    const cRe = c * cos2 - ci * sin2;
    const cIm = c * sin2 + ci * cos2;
    const d = parts[fourth + k] ?? 0;
    const di = parts[fourth + k + 1] ?? 0;
    const dRe = d * cos3 - di * sin3;
    const dIm = d * sin3 + di * cos3;
    out[k] = aRe + cRe + (bRe + dRe);
    out[k + 1] = aIm + cIm + (bIm + dIm);
    out[second + k] = aRe - cRe + (bIm - dIm);
    out[second + k + 1] = aIm - cIm - (bRe - dRe);
    out[third + k] = aRe + cRe - (bRe + dRe);
    out[third + k + 1] = aIm + cIm - (bIm + dIm);
    out[fourth + k] = aRe - cRe - (bIm - dIm);
    out[fourth + k + 1] = aIm - cIm + (bRe - dRe);
  }
}
