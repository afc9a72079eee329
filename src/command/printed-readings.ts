import type { Readings } from '../reading/reading';

/** Readings as they are printed: without the curves of the screens unless they are asked for. */
export function printedReadings(readings: Readings, withCurves: boolean): object {
  if (withCurves) return readings;
  const channels = readings.channels.map(({ curves, bassBands, distortion, ...rest }) => {
    void curves;
    void bassBands;
    void distortion;
    return rest;
  });
  return { ...readings, channels };
}
