import type { Schedule } from '../take/schedule';
import type { PracticeSystem } from './practice-system';

/** Rate of every simulated recorder, Hz. */
export const practiceRate = 48000;

/** Stimulus sample s reaches the recorder as its sample s · ratio + latency. */
export function recorderClock(
  { skewPpm, latencySeconds }: PracticeSystem,
  { sampleRate }: Pick<Schedule, 'sampleRate'>,
): { readonly ratio: number; readonly latency: number } {
  return {
    ratio: (practiceRate / sampleRate) * (1 + skewPpm * 1e-6),
    latency: latencySeconds * practiceRate,
  };
}
