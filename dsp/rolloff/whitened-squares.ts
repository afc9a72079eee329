/** Vectors looked at together. */
export const lanes = 4;

/**
 * ‖W r‖² of four vectors r into `squares`, all finite. `whitening` is n × n in rows and zero above its
 * diagonal; entry i of vector k is residuals[4·i + k]. Two rows at a time, so that each number is
 * fetched once for eight products.
 */
export function whitenedSquares(
  whitening: Float64Array,
  residuals: Float64Array,
  squares: Float64Array,
): void {
  const count = residuals.length / lanes;
  squares.fill(0);
  for (let row = 0; row < count; row += 2) {
    const base = row * count;
    // A row beyond the last counts as 0.
    const next = row + 1 < count ? base + count : base;
    const second = next > base ? 1 : 0;
    let a = 0;
    let b = 0;
    let c = 0;
    let d = 0;
    let e = 0;
    let f = 0;
    let g = 0;
    let h = 0;
    // W is zero above its diagonal.
    const end = row + 1 + second;
    for (let column = 0; column < end; column++) {
      const upper = whitening[base + column] ?? 0;
      const lower = whitening[next + column] ?? 0;
      const at = lanes * column;
      const one = residuals[at] ?? 0;
      a += upper * one;
      e += lower * one;
      const two = residuals[at + 1] ?? 0;
      b += upper * two;
      f += lower * two;
      const three = residuals[at + 2] ?? 0;
      c += upper * three;
      g += lower * three;
      const four = residuals[at + 3] ?? 0;
      d += upper * four;
      h += lower * four;
    }
    squares[0] = (squares[0] ?? 0) + a * a + second * e * e;
    squares[1] = (squares[1] ?? 0) + b * b + second * f * f;
    squares[2] = (squares[2] ?? 0) + c * c + second * g * g;
    squares[3] = (squares[3] ?? 0) + d * d + second * h * h;
  }
}
