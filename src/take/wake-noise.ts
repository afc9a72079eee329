import { gaussian, seededRandom } from '../../dsp/signal/random';

/**
 * Quiet noise with as much below 150 Hz as above, so that receivers unmute and subs on standby
 * wake. `length` samples of the given rms (dB re full scale), faded over a twentieth at both
 * ends; the same seed gives the same noise.
 */
export function wakeNoise(length: number, sampleRate: number, levelDb: number, seed: number) {
  const noise = new Float32Array(length);
  const normal = gaussian(seededRandom(seed));
  const keep = Math.exp((-2 * Math.PI * 150) / sampleRate);
  const lowGain = Math.sqrt(1 - keep * keep);
  const rms = 10 ** (levelDb / 20);
  const fade = length / 20;
  let low = 0;
  for (let n = 0; n < length; n++) {
    low = keep * low + lowGain * normal();
    const edge = Math.min(1, n / fade, (length - 1 - n) / fade);
    noise[n] = rms * edge * Math.SQRT1_2 * (low + normal());
  }
  return noise;
}
