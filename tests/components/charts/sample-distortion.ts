import type { DistortionCurves } from '../../../components/charts/distortion-curves';
import type { HarmonicCurve, HarmonicLimit } from '../../../dsp/distortion/harmonic-reading';
import { sumHarmonics } from '../../../dsp/distortion/sum-harmonics';

const hz = Array.from({ length: 54 }, (_, n) => 17.54 * 2 ** (n / 6));

/** Invented: distortion that falls with frequency into noise, and a stretch under the room's decay. */
function harmonic(order: number, bassDb: number, slope: number): HarmonicCurve & { order: number } {
  const floors = hz.map((f) => -66 - 2 * order - 3 * Math.log2(f / 100));
  const levels = hz.map((f) => bassDb - slope * Math.log2(Math.max(f, 25) / 25));
  const limits = hz.map((f, i): HarmonicLimit | null => {
    if (order * f > 17_000) return 'band';
    if (order === 2 && f > 40 && f < 60) return 'decay';
    return (levels[i] ?? 0) > (floors[i] ?? 0) ? null : 'noise';
  });
  return {
    order,
    db: levels.map((db, i) => (limits[i] === null ? db : null)),
    floorDb: floors.map((db, i) =>
      limits[i] === 'band' ? null : limits[i] === 'decay' ? -30 : db,
    ),
    limitedBy: limits,
  };
}

export function sampleDistortion(): DistortionCurves {
  const harmonics = [
    harmonic(2, -32, 8),
    harmonic(3, -27, 12),
    harmonic(4, -52, 9),
    harmonic(5, -55, 10),
  ];
  return {
    kind: 'curves',
    hz,
    fundamentalDb: hz.map((f) => -20 - 10 * Math.log10(1 + (45 / f) ** 4)),
    fundamentalNoiseDb: hz.map(() => -85),
    harmonics,
    total: sumHarmonics(harmonics),
    apartFromHz: 62.5,
  };
}
