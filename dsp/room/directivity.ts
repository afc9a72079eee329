import { bandHz } from './bands';

/**
 * How a speaker beams. Towards an angle θ off its axis the pressure falls like a first-order
 * low-pass at cornerHz·2/(1 − cos θ) down to a floor.
 */
export interface Directivity {
  readonly cornerHz: number;
  readonly floorDb: number;
}

/**
 * Pressure re on axis at one frequency towards a direction whose cosine to the axis is given, no
 * phase: D² = F² + (1 − F²)/(1 + (f(1 − cos θ)/(2 f_c))²).
 */
export function directivityGain(directivity: Directivity, cosine: number, hz: number): number {
  return directivityGains(directivity)(cosine, hz);
}

/** directivityGain of one speaker, prepared for many directions and frequencies. */
export function directivityGains({
  cornerHz,
  floorDb,
}: Directivity): (cosine: number, hz: number) => number {
  const floor = 10 ** (floorDb / 10);
  return (cosine, hz) => {
    const x = (hz * (1 - cosine)) / (2 * cornerHz);
    return Math.sqrt(floor + (1 - floor) / (1 + x * x));
  };
}

/** Power per band, averaged over the whole sphere, re on axis. */
export function diffusePower(directivity: Directivity): number[] {
  const steps = 64;
  const gain = directivityGains(directivity);
  return bandHz.map((hz) => {
    let sum = 0;
    for (let i = 0; i < steps; i++) {
      const cosine = (2 * i + 1) / steps - 1;
      sum += gain(cosine, hz) ** 2;
    }
    return sum / steps;
  });
}
