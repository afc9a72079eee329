import { amplitudeToDb } from './decibels';

/** Frequency weightings of a sound level meter; Z is flat. */
export type Weighting = 'A' | 'C' | 'Z';

/** Design goals of IEC 61672-1:2013 annex E: reference, −3 dB ends, corner of A, all in Hz. */
const referenceHz = 1000;
const lowEndHz = 10 ** 1.5;
const highEndHz = 10 ** 3.9;
const lowCornerHz = 10 ** 2.45;

/** Poles f1 … f4 in Hz; f1 and f4 are shared by A and C, each twice. */
export const weightingPoles = computePoles();

/**
 * Weighting in dB at `hz`, 0 at 1 kHz. C = f4² f² / ((f² + f1²)(f² + f4²));
 * A = C · f² / √((f² + f2²)(f² + f3²)). Throws RangeError for hz below 0.
 * Source: IEC 61672-1:2013, annex E.
 */
export function weightingDb(kind: Weighting, hz: number): number {
  if (!(hz >= 0 && hz < Infinity)) throw new RangeError(`hz must not be negative, got ${hz}`);
  if (kind === 'Z') return 0;
  return amplitudeToDb(weigh(kind, hz) / weigh(kind, referenceHz));
}

function weigh(kind: 'A' | 'C', hz: number): number {
  const [f1, f2, f3, f4] = weightingPoles;
  const s = hz * hz;
  const c = (f4 * f4 * s) / ((s + f1 * f1) * (s + f4 * f4));
  return kind === 'C' ? c : (c * s) / Math.sqrt((s + f2 * f2) * (s + f3 * f3));
}

function computePoles(): readonly [number, number, number, number] {
  const half = Math.SQRT1_2;
  const c = (lowEndHz * highEndHz) ** 2;
  const b =
    (referenceHz ** 2 + c / referenceHz ** 2 - half * (lowEndHz ** 2 + highEndHz ** 2)) /
    (1 - half);
  const root = Math.sqrt(b * b - 4 * c);
  const golden = Math.sqrt(5);
  return [
    Math.sqrt((-b - root) / 2),
    ((3 - golden) / 2) * lowCornerHz,
    ((3 + golden) / 2) * lowCornerHz,
    Math.sqrt((-b + root) / 2),
  ];
}
