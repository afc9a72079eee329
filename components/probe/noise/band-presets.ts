/** A band of noise, Hz. */
export interface NoiseBand {
  readonly lowHz: number;
  readonly highHz: number;
}

export type PresetId = 'full' | 'mains' | 'sub';

/** Bands the trade uses: everything, the band mains are levelled in, the band of subs. */
export const presets: Readonly<Record<PresetId, NoiseBand>> = {
  full: { lowHz: 20, highHz: 20_000 },
  mains: { lowHz: 500, highHz: 2000 },
  sub: { lowHz: 30, highHz: 80 },
};

/** The preset a band is; null when it is none. */
export function presetOf(lowHz: number, highHz: number): PresetId | null {
  const ids: readonly PresetId[] = ['full', 'mains', 'sub'];
  return ids.find((id) => presets[id].lowHz === lowHz && presets[id].highHz === highHz) ?? null;
}
