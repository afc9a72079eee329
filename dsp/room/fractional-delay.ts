/**
 * Adds amplitude · sinc to `into` around a fractional place: `taps` (even) samples of a windowed
 * sinc. Places outside wrap round, as in a circular transform.
 * Source: windowed-sinc interpolation, Laakso et al., 1996.
 */
export function addImpulse(
  into: Float64Array,
  place: number,
  amplitude: number,
  taps: number,
): void {
  const whole = Math.floor(place);
  const kernel = impulseTaps(place - whole, taps);
  const first = whole - taps / 2 + 1;
  const size = into.length;
  for (let k = 0; k < taps; k++) {
    const at = (((first + k) % size) + size) % size;
    into[at] = (into[at] ?? 0) + amplitude * (kernel[k] ?? 0);
  }
}

/**
 * Taps of a delay by taps/2 − 1 + fraction samples, fraction 0 … 1. The window is
 * exp(β(√(1 − u²) − 1)), a near twin of Kaiser's. Source: Barnett et al., SIAM J. Sci. Comput. 2019.
 */
export function impulseTaps(fraction: number, taps: number): Float64Array {
  const beta = 9;
  const kernel = new Float64Array(taps);
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
