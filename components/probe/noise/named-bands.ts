import { noiseBands, type NoiseBand } from '../../../src/noise/noise-bands';

/** The band of the trade that has this id. */
export function namedBand(id: NoiseBand['id']): NoiseBand {
  const band = noiseBands.find((one) => one.id === id);
  if (!band) throw new RangeError(`there is no band ${id}`);
  return band;
}

/** The id of the trade's band with these limits; null when it is none. */
export function presetOf(lowHz: number, highHz: number): NoiseBand['id'] | null {
  const found = noiseBands.find((one) => one.lowHz === lowHz && one.highHz === highHz);
  return found?.id ?? null;
}
