/** Midpoints of the bands in which walls, air and directivity are given, Hz; one octave apart. */
export const bandHz: readonly number[] = [
  31.25, 62.5, 125, 250, 500, 1000, 2000, 4000, 8000, 16000,
];

/** Bands below this index are computed in full at a low rate; they end at 500 Hz. */
export const bassBands = 4;

/** Attenuation of air, 20 °C and 50 % humidity, dB/m per band. Source: ISO 9613-1, from memory. */
export const airDbPerMetre: readonly number[] = [
  0, 0, 0.0004, 0.0013, 0.0027, 0.0047, 0.0099, 0.0297, 0.105, 0.36,
];

/**
 * Weights of all bands at a frequency ≥ 0: squared cosines over log2 f that sum to one, flat below
 * the first and above the last midpoint.
 */
export function bandWeights(hz: number): number[] {
  return bandHz.map((_, band) => bandWeight(hz, band));
}

/** The weight of one of the bands at a frequency ≥ 0; see bandWeights. */
export function bandWeight(hz: number, band: number): number {
  const place = Math.min(Math.max(Math.log2(hz / (bandHz[0] ?? 1)), 0), bandHz.length - 1);
  const away = Math.abs(place - band);
  return away < 1 ? Math.cos((Math.PI / 2) * away) ** 2 : 0;
}

/** Share of the bass at a frequency: all below 250 Hz, nothing above 500 Hz. */
export function bassShare(hz: number): number {
  return bandWeights(hz)
    .slice(0, bassBands)
    .reduce((sum, weight) => sum + weight, 0);
}

/**
 * Causal complex weights of the bass bands, which sum to one: a chain of first-order low-passes at
 * 44, 88 and 177 Hz, each band taking what the ones before it left.
 */
export function bassWeights(hz: number): [number, number][] {
  const weights: [number, number][] = [];
  let [re, im] = [1, 0];
  for (const middle of bandHz.slice(0, bassBands - 1)) {
    const w = hz / (middle * Math.SQRT2);
    const scale = 1 / (1 + w * w);
    // 1/(1 + jw) of what is left goes to this band.
    const own: [number, number] = [scale * (re + im * w), scale * (im - re * w)];
    weights.push(own);
    [re, im] = [re - own[0], im - own[1]];
  }
  return [...weights, [re, im]];
}
