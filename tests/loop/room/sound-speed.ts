/** Speed of sound, m/s (ISO 9613-1). */
export function soundSpeed(celsius: number): number {
  return 343.2 * Math.sqrt((celsius + 273.15) / 293.15);
}
