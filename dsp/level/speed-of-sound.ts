const zeroCelsiusKelvin = 273.15;

/**
 * Speed of sound in dry air, m/s: c = 343.2·√(T/293.15 K), T the absolute temperature of
 * `celsius`. Throws RangeError below absolute zero. Source: ISO 9613-1:1993.
 */
export function speedOfSound(celsius: number): number {
  if (!(celsius > -zeroCelsiusKelvin && celsius < Infinity)) {
    throw new RangeError(`celsius must lie above −273.15, got ${celsius}`);
  }
  return 343.2 * Math.sqrt((celsius + zeroCelsiusKelvin) / 293.15);
}
