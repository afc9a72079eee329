import { deconvolveSweep } from '../response/deconvolve';
import type { SweepSpec } from '../signal/sweep';
import { analyticBand } from './analytic-band';
import type { MarkFinding } from './mark-finding';
import { readBetween } from './resample';
import type { Samples } from '../signal/samples';

/** A sweep of the take: the mark that opens its segment and its start, stimulus samples. */
export interface MarkedSweep {
  readonly mark: number;
  readonly startSample: number;
  readonly sweep: SweepSpec;
}

const preSeconds = 0.1;
const afterSeconds = 0.2;
const bandHz = [3000, 17_000] as const;

/**
 * A judge of skews for estimateClock: with the wrong skew a sweep's response is smeared, its treble
 * arrives at other times than its middle. Gives for a skew the sum over the sweeps of the logarithm
 * of the response's highest power over its energy, 3 to 17 kHz; larger is likelier. Speakers smear
 * the treble by themselves, as much as 100 ppm do over 2.7 s, so it tells skews some 200 ppm apart.
 * Sweeps that end below the band and unheard marks are left out.
 */
export function sweepSharpness(
  capture: Samples,
  finding: MarkFinding,
  markStarts: readonly number[],
  sweeps: readonly MarkedSweep[],
): (skew: number) => number {
  const nominal = finding.captureRate / finding.stimulusRate;
  return (skew) => {
    let score = 0;
    for (const { mark, startSample, sweep } of sweeps) {
      const found = finding.marks[mark];
      if (!found || sweep.endHz < bandHz[1]) continue;
      const ratio = nominal * (1 + skew);
      const pre = Math.round(preSeconds * sweep.sampleRate);
      const length = pre + Math.round(afterSeconds * sweep.sampleRate);
      const from = found.position + ratio * (startSample - pre - (markStarts[mark] ?? 0));
      const heard = readBetween(
        capture,
        from,
        ratio,
        length + sweep.lengthSamples,
        Math.min(1, 1 / nominal),
      );
      const options = { preSamples: pre, lengthSamples: length };
      score += sharpness(deconvolveSweep(heard, pre, sweep, options).samples, sweep.sampleRate);
    }
    return score;
  };
}

function sharpness(response: Float64Array, sampleRate: number): number {
  const band = analyticBand(response, sampleRate, ...bandHz);
  let energy = 0;
  let peak = 0;
  for (let n = 0; n < band.length; n += 2) {
    const power = (band[n] ?? 0) ** 2 + (band[n + 1] ?? 0) ** 2;
    energy += power;
    peak = Math.max(peak, power);
  }
  return energy > 0 ? Math.log(peak / energy) : 0;
}
