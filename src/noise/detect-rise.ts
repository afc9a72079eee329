import { createRunningSpectrum } from '../../dsp/noise/running-spectrum';
import { integratePower } from '../../dsp/response/power-spectrum';

/** Where listening stands. */
export type ListeningPhase = 'silence' | 'waiting' | 'risen' | 'fallen';

export interface RiseDetector {
  push(samples: Float32Array): void;
  gap(): void;
  readonly phase: ListeningPhase;
}

/** Power over the silence's that counts as noise, and for how many stretches on end. */
const riseRatio = 4;
const leastStretches = 3;
const stretchSize = 8192;
/** What is quieter than this counts as digital silence. */
const leastPower = 1e-14;

/**
 * Listens to a band in silence for `silenceSeconds`, then waits until it is 6 dB louder for a
 * quarter of a second, then until that is over, then until it rises again.
 */
export function createRiseDetector(
  lowHz: number,
  highHz: number,
  sampleRate: number,
  silenceSeconds: number,
): RiseDetector {
  const spectrum = createRunningSpectrum(stretchSize, sampleRate, 1);
  const stretches = Math.max(Math.round((silenceSeconds * sampleRate * 2) / stretchSize) - 1, 3);
  const quiet: number[] = [];
  let threshold = Infinity;
  let inRow = 0;
  let phase: ListeningPhase = 'silence';
  const judge = (power: number): void => {
    if (phase === 'silence') {
      quiet.push(power);
      if (quiet.length < stretches) return;
      quiet.sort((a, b) => a - b);
      threshold = riseRatio * Math.max(quiet[Math.floor(0.7 * quiet.length)] ?? 0, leastPower);
      phase = 'waiting';
      return;
    }
    const isLoud = power > threshold;
    inRow = isLoud === (phase === 'risen') ? 0 : inRow + 1;
    if (inRow < leastStretches) return;
    inRow = 0;
    phase = phase === 'risen' ? 'fallen' : 'risen';
  };
  return {
    push(samples) {
      const step = stretchSize / 4;
      for (let at = 0; at < samples.length; at += step) {
        if (spectrum.push(samples.subarray(at, at + step)) === 0) continue;
        const now = spectrum.read();
        if (!now) continue;
        const integral = integratePower(now);
        judge(Math.max(integral(highHz) - integral(lowHz), 0) / now.hzPerBin);
      }
    },
    gap: () => spectrum.gap(),
    get phase() {
      return phase;
    },
  };
}
