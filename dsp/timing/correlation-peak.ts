import { realSignal, type HalfSpectrum } from '../fft/fft';

/**
 * Highest point, within ±reach samples of lag 0, of the correlation whose half spectrum is
 * `cross`; band-limited interpolation (Newton steps on the sum over the bins), so without the bias
 * of a parabola. Throws nothing; lag 0 for an empty correlation.
 */
export function findCorrelationPeak(
  cross: HalfSpectrum,
  size: number,
  reach: number,
): { lag: number; value: number } {
  const correlation = realSignal(cross, size);
  const at = (lag: number): number => correlation[(lag + size) % size] ?? 0;
  let whole = 0;
  for (let lag = -reach; lag <= reach; lag++) if (at(lag) > at(whole)) whole = lag;
  let lag = whole;
  let value = at(whole);
  for (let step = 0; step < 8; step++) {
    const { height, slope, bend } = evaluate(cross, size, lag);
    value = height;
    if (!(bend < 0)) break;
    const move = Math.min(Math.max(-slope / bend, -0.5), 0.5);
    if (Math.abs(lag + move - whole) > 1) break;
    lag += move;
    if (Math.abs(move) < 1e-9) break;
  }
  return { lag, value };
}

/** Correlation and its first two derivatives at a fractional lag. */
function evaluate(cross: HalfSpectrum, size: number, lag: number) {
  let height = 0;
  let slope = 0;
  let bend = 0;
  for (let bin = 1; bin < size / 2; bin++) {
    const re = cross[2 * bin] ?? 0;
    const im = cross[2 * bin + 1] ?? 0;
    if (re === 0 && im === 0) continue;
    const omega = (2 * Math.PI * bin) / size;
    const cos = Math.cos(omega * lag);
    const sin = Math.sin(omega * lag);
    const real = re * cos - im * sin;
    height += real;
    slope -= omega * (re * sin + im * cos);
    bend -= omega * omega * real;
  }
  return { height: (2 * height) / size, slope: (2 * slope) / size, bend: (2 * bend) / size };
}
