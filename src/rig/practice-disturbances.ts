import { disturbance, type DisturbanceKind } from '../../dsp/room/disturbances';
import type { Schedule } from '../take/schedule';
import { practiceRate, recorderClock } from './practice-clock';
import type { PracticeFaults, PracticeSystem, SweepPlace } from './practice-system';

/** Peaks of noises as people make them near a microphone set for sweeps, dB re full scale. */
const usualPeaks: Readonly<Record<DisturbanceKind, number>> = {
  bang: -18,
  rumble: -30,
  hum: -42,
  voice: -30,
};

/**
 * Adds the noises that happen in speakers' sweeps to a capture, then turns its gain where that is
 * wished. What concerns a speaker the take does not sweep does not happen.
 */
export function disturbCapture(
  capture: Float64Array,
  system: PracticeSystem,
  schedule: Schedule,
  { disturbances = [], gainSteps = [] }: PracticeFaults,
): void {
  for (const [index, one] of disturbances.entries()) {
    const start = placeOf(one, system, schedule);
    if (start === null) continue;
    const gain = 10 ** ((one.peakDb ?? usualPeaks[one.kind]) / 20);
    const noise = disturbance(one.kind, practiceRate, system.seed + 0.0625 * (index + 1));
    const end = Math.min(noise.length, capture.length - start);
    for (let n = 0; n < end; n++) {
      capture[start + n] = (capture[start + n] ?? 0) + gain * (noise[n] ?? 0);
    }
  }
  for (const step of gainSteps) {
    const start = placeOf(step, system, schedule);
    if (start === null) continue;
    const gain = 10 ** (step.db / 20);
    for (let n = start; n < capture.length; n++) capture[n] = gain * (capture[n] ?? 0);
  }
}

/** Sample of the capture; null when the take has no such sweep. */
function placeOf(place: SweepPlace, system: PracticeSystem, schedule: Schedule): number | null {
  const sweeps = schedule.segments.filter(({ channel }) => channel === place.channel);
  const segment = sweeps[place.sweep ?? 0];
  if (!segment) return null;
  const { ratio, latency } = recorderClock(system, schedule);
  const third = segment.sweep.lengthSamples / 3;
  const after = place.afterSeconds === undefined ? third : place.afterSeconds * schedule.sampleRate;
  return Math.max(0, Math.round((segment.sweepStart + after) * ratio + latency));
}
