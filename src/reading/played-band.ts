import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { powerSpectrum } from '../../dsp/response/power-spectrum';
import { smoothPower } from '../../dsp/response/smoothing';

/** Band that is surely played, Hz, and how far below it the played band reaches, dB. */
const sure = { main: [500, 2000], sub: [40, 80] } as const;
const fallDb = 20;

/**
 * Band a speaker plays: third-octaves around 500 to 2000 Hz (subs 40 to 80 Hz) out to where two in
 * a row lie more than 20 dB below that range's mean.
 */
export function playedBand(ir: ImpulseResponse, isSub: boolean): readonly [number, number] {
  const [low, high] = isSub ? sure.sub : sure.main;
  const spectrum = powerSpectrum(ir);
  const hz = Float64Array.from({ length: 31 }, (_, k) => 1000 * 2 ** ((k - 18) / 3));
  const power = smoothPower(spectrum, hz, 3);
  const inside = power.filter((_, k) => (hz[k] ?? 0) >= low && (hz[k] ?? 0) <= high);
  const least = (10 ** (-fallDb / 10) * inside.reduce((sum, one) => sum + one, 0)) / inside.length;
  const walk = (from: number, step: 1 | -1): number => {
    let edge = from;
    for (let k = from; k >= 0 && k < hz.length; k += step) {
      if ((power[k] ?? 0) >= least) edge = k;
      else if (Math.abs(k - edge) >= 2) break;
    }
    return edge;
  };
  const lowest = walk(
    hz.findIndex((f) => f >= low),
    -1,
  );
  const highest = walk(
    hz.findLastIndex((f) => f <= high),
    1,
  );
  return [hz[lowest] ?? low, hz[highest] ?? high];
}
