import { gaussian, seededRandom } from '../../dsp/signal/random';
import type { ChannelLabel } from '../../src/system/channel';
import { renderChannel } from '../../src/take/render';
import type { Schedule } from '../../src/take/schedule';
import { createConvolver } from './room/convolver';
import { createSkew } from './room/skew';

const blockLength = 1024;
/** The room rings on after the take, samples. */
const after = 24_000;

export interface Microphone {
  /** Its clock against that of the outputs. */
  readonly skewPpm: number;
  /** Rms of its noise, dB re full scale. */
  readonly noiseDb: number;
  readonly gainDb: number;
  readonly seed: number;
}

/** What the loop's room would record of a take, without audio and without waiting for it. */
export function hearOffline(
  schedule: Schedule,
  response: (channel: ChannelLabel) => Float64Array,
  { skewPpm, noiseDb, gainDb, seed }: Microphone,
): Float32Array {
  const convolver = createConvolver(schedule.channels.map(response), blockLength);
  const played = schedule.channels.map((channel) => renderChannel(schedule, channel));
  const skew = createSkew(1 + skewPpm * 1e-6);
  const normal = gaussian(seededRandom(seed));
  const [gain, rms] = [10 ** (gainDb / 20), 10 ** (noiseDb / 20)];
  const heard: number[] = [];
  for (let at = 0; at < schedule.lengthSamples + after; at += blockLength) {
    for (const [index, samples] of played.entries()) {
      const block = new Float64Array(blockLength);
      block.set(samples.subarray(at, at + blockLength));
      convolver.add(index, block);
    }
    for (const value of skew(convolver.take())) heard.push(gain * value + rms * normal());
  }
  return Float32Array.from(heard);
}
