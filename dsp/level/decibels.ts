/** Powers below this count as this: −300 dB stands for nothing at all. */
const leastPower = 1e-30;

/** 10·log10 of a power ratio, not below −300 dB. Throws RangeError when negative or NaN. */
export function powerToDb(power: number): number {
  if (!(power >= 0)) throw new RangeError(`power must not be negative, got ${power}`);
  return 10 * Math.log10(Math.max(power, leastPower));
}

/** 20·log10 of an amplitude ratio, its sign ignored, not below −300 dB. Throws RangeError for NaN. */
export function amplitudeToDb(amplitude: number): number {
  return powerToDb(amplitude * amplitude);
}

/** 10^(dB/10). */
export function dbToPower(db: number): number {
  return 10 ** (db / 10);
}

/** 10^(dB/20). */
export function dbToAmplitude(db: number): number {
  return 10 ** (db / 20);
}
