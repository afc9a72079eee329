import type { ChannelLabel } from '../system/channel';
import { metresBetween, type SpeakerOffset } from '../system/speaker-offset';

/** A speaker of the plan and how far it is by its arrival. */
export interface PlacedDistance {
  readonly channel: ChannelLabel;
  /** From the seat of the plan. */
  readonly offset: SpeakerOffset;
  readonly metres: number;
}

/** The microphone's place that fits a set of distances best. */
export interface SeatFit {
  /** From the seat of the plan. */
  readonly rightMetres: number;
  readonly backMetres: number;
  /** What all distances are too long by; 0 where that cannot be told from the place. */
  readonly commonMetres: number;
  /** Measured less fitted distance of each speaker, in order. */
  readonly residuals: readonly number[];
  readonly worstMetres: number;
}

/** With a tape good to this, metres, each unknown must come out this well. */
const tapeSd = 0.03;
const largestSd = 0.12;
const rounds = 12;
const leastDistance = 0.05;

/**
 * Least squares over the microphone's place in the plane of the ears and, with five speakers or
 * more, an error common to all distances. Null when the speakers do not stand so that it could be
 * told. Source: Gauss-Newton on ranges, common practice.
 */
export function fitSeat(speakers: readonly PlacedDistance[]): SeatFit | null {
  if (speakers.length < 4) return null;
  return (speakers.length >= 5 ? solve(speakers, 3) : null) ?? solve(speakers, 2);
}

/** Measured less fitted distance of a speaker that need not have been in the fit. */
export function misfit(
  {
    rightMetres,
    backMetres,
    commonMetres,
  }: Pick<SeatFit, 'rightMetres' | 'backMetres' | 'commonMetres'>,
  { offset, metres }: PlacedDistance,
): number {
  const seat = { rightMetres, backMetres, upMetres: 0 };
  return metres - metresBetween(offset, seat) - commonMetres;
}

function solve(speakers: readonly PlacedDistance[], unknowns: 2 | 3): SeatFit | null {
  let seat = { rightMetres: 0, backMetres: 0, commonMetres: 0 };
  for (let round = 0; round < rounds; round++) {
    const rows = speakers.map(({ offset }) => slopes(offset, seat).slice(0, unknowns));
    const normal = rows[0]?.map(
      (_, i) =>
        rows[0]?.map((__, j) =>
          rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0),
        ) ?? [],
    );
    const inverse = normal && invert(normal);
    if (!inverse) return null;
    if (inverse.some((row, i) => tapeSd * Math.sqrt(row[i] ?? Infinity) > largestSd)) return null;
    const right = rows[0]?.map((_, i) =>
      rows.reduce((sum, row, k) => {
        const speaker = speakers[k];
        return sum + (row[i] ?? 0) * (speaker ? misfit(seat, speaker) : 0);
      }, 0),
    );
    const [x = 0, y = 0, common = 0] = inverse.map((row) =>
      row.reduce((sum, value, j) => sum + value * (right?.[j] ?? 0), 0),
    );
    seat = {
      rightMetres: seat.rightMetres + x,
      backMetres: seat.backMetres + y,
      commonMetres: seat.commonMetres + common,
    };
  }
  const residuals = speakers.map((speaker) => misfit(seat, speaker));
  const worstMetres = Math.max(...residuals.map(Math.abs));
  return Number.isFinite(worstMetres) ? { ...seat, residuals, worstMetres } : null;
}

/** How a speaker's distance changes with the microphone's place and the common error. */
function slopes(
  offset: SpeakerOffset,
  { rightMetres, backMetres }: { readonly rightMetres: number; readonly backMetres: number },
): number[] {
  const far = metresBetween(offset, { rightMetres, backMetres, upMetres: 0 });
  const metres = Math.max(far, leastDistance);
  return [
    (rightMetres - offset.rightMetres) / metres,
    (backMetres - offset.backMetres) / metres,
    1,
  ];
}

/** Inverse of a small symmetric matrix (Gauss-Jordan); null when it has none. */
function invert(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const below = rows.slice(i);
    const best = below.reduce(
      (a, b) => (Math.abs(b[i] ?? 0) > Math.abs(a[i] ?? 0) ? b : a),
      below[0] ?? [],
    );
    const pivot = best[i] ?? 0;
    if (Math.abs(pivot) < 1e-9) return null;
    rows.splice(rows.indexOf(best), 1);
    rows.splice(
      i,
      0,
      best.map((value) => value / pivot),
    );
    for (const [k, row] of rows.entries()) {
      const share = row[i] ?? 0;
      if (k === i || share === 0) continue;
      rows[k] = row.map((value, j) => value - share * (rows[i]?.[j] ?? 0));
    }
  }
  return rows.map((row) => row.slice(n));
}
