import { nextPowerOfTwo, realSignal } from '../fft/fft';
import type { ImpulseResponse } from './impulse-response';
import { lowSpectrum } from './whole-spectrum';

export interface DecayOptions {
  /** Steady noise that went through the same deconvolution; null: the response's own last tenth. */
  readonly noise: ImpulseResponse | null;
  /** Keeps what lies below this, Hz; left out: everything. */
  readonly belowHz?: number;
  /** How far below its peak the response must have fallen, dB; default 45. */
  readonly fallDb?: number;
}

/** Power is judged in blocks of 10 ms, below `belowHz` of three of its periods. */
const blockSeconds = 0.01;
const blockCycles = 3;
/** A block this much over the mean noise is more than noise. */
const overNoise = 4;

/**
 * Seconds after zero delay from which on the response stays `fallDb` below its peak or in the
 * noise. Null when its end comes first, or when it is silent. Mean powers of successive blocks.
 * Throws RangeError for a belowHz or fallDb that is not positive. Common practice.
 */
export function decayTime(ir: ImpulseResponse, options: DecayOptions): number | null {
  const { noise, belowHz, fallDb = 45 } = options;
  if (!(fallDb > 0)) throw new RangeError(`fallDb must be positive, got ${fallDb}`);
  if (belowHz !== undefined && !(belowHz > 0)) {
    throw new RangeError(`belowHz must be positive, got ${belowHz}`);
  }
  const heard = belowHz === undefined ? ir : lowPart(ir, belowHz);
  const seconds = belowHz === undefined ? blockSeconds : blockCycles / belowHz;
  const block = Math.max(1, Math.round(seconds * heard.sampleRate));
  const powers = blockPowers(heard, block);
  const peak = Math.max(...powers);
  if (!(peak > 0)) return null;
  const hiss = noise && (belowHz === undefined ? noise : lowPart(noise, belowHz));
  const level = hiss
    ? mean(blockPowers(hiss, block))
    : mean(powers.slice(-Math.ceil(powers.length / 10)));
  const least = Math.max(peak * 10 ** (-fallDb / 10), overNoise * level);
  const last = powers.findLastIndex((power) => power > least);
  // The last blocks belong to the fade at the response's end.
  if (last >= powers.length - 2) return null;
  return ((last + 1) * block) / heard.sampleRate;
}

/** Mean powers of the blocks from zero delay on. */
function blockPowers({ samples, zeroIndex }: ImpulseResponse, block: number): number[] {
  const powers: number[] = [];
  for (let at = zeroIndex; at + block <= samples.length; at += block) {
    let sum = 0;
    for (let n = at; n < at + block; n++) sum += (samples[n] ?? 0) ** 2;
    powers.push(sum / block);
  }
  return powers;
}

function mean(values: readonly number[]): number {
  let sum = 0;
  for (const one of values) sum += one;
  return sum / Math.max(1, values.length);
}

/** The response below `hz`, at a lower rate; falls by half a raised cosine up to 1.4 times `hz`. */
function lowPart({ samples, sampleRate, zeroIndex }: ImpulseResponse, hz: number): ImpulseResponse {
  const size = nextPowerOfTwo(samples.length);
  const lineHz = sampleRate / size;
  const small = Math.min(size, nextPowerOfTwo((4 * hz) / lineHz));
  const spectrum = lowSpectrum(samples, small / 2);
  const kept = new Float64Array(small + 2);
  for (let k = 0; k < small / 2; k++) {
    const along = Math.min(Math.max((k * lineHz) / hz - 1, 0) / 0.4, 1);
    const gain = (0.5 * (1 + Math.cos(Math.PI * along)) * small) / size;
    kept[2 * k] = gain * (spectrum[2 * k] ?? 0);
    kept[2 * k + 1] = gain * (spectrum[2 * k + 1] ?? 0);
  }
  const step = size / small;
  return {
    samples: realSignal(kept, small).slice(0, Math.floor(samples.length / step)),
    sampleRate: sampleRate / step,
    zeroIndex: Math.round(zeroIndex / step),
  };
}
