const below1kHz = ['31.5', '63', '125', '250', '500'] as const;

/** Nominal name of the octave band whose exact midpoint is given: 31.5 Hz … 16 kHz, else rounded. */
export function octaveName(midHz: number): string {
  const steps = Math.round(Math.log10(midHz / 1000) / 0.3);
  if (steps >= 0) return `${2 ** steps} kHz`;
  return `${below1kHz[steps + below1kHz.length] ?? midHz.toFixed(0)} Hz`;
}
