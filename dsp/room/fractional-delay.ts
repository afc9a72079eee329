/**
 * Taps (even) of a delay by taps/2 − 1 + fraction samples, fraction 0 … 1: a windowed sinc, in
 * `kernel` where that is given. The window is exp(β(√(1 − u²) − 1)), a near twin of Kaiser's.
 * Sources: Laakso et al., 1996; Barnett et al., SIAM J. Sci. Comput. 2019.
 */
export function impulseTaps(
  fraction: number,
  taps: number,
  kernel: Float64Array = new Float64Array(taps),
): Float64Array {
  const beta = 9;
  const sine = Math.sin(Math.PI * fraction);
  for (let k = 0; k < taps; k++) {
    const t = k - (taps / 2 - 1) - fraction;
    const u = t / (taps / 2);
    const window = Math.abs(u) < 1 ? Math.exp(beta * (Math.sqrt(1 - u * u) - 1)) : 0;
    // sin(πt) = ∓ sin(π·fraction): the tap's distance to the middle is whole.
    const sinc =
      Math.abs(t) < 1e-9 ? 1 : ((k - taps / 2 + 1) % 2 === 0 ? -sine : sine) / (Math.PI * t);
    kernel[k] = sinc * window;
  }
  return kernel;
}
