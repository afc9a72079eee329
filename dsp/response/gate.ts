import type { ImpulseResponse } from './impulse-response';

export interface GateOptions {
  /** Moment the gate is laid round, seconds after zero delay. */
  readonly arrivalSeconds: number;
  /** What is kept before and after it, seconds. */
  readonly beforeSeconds: number;
  readonly afterSeconds: number;
  /** Share of either side over which it falls to nothing, 0 … 1; default 0.5. */
  readonly fade?: number;
}

export interface GatedResponse {
  /** Same length, rate and zero delay; nothing outside the gate. */
  readonly ir: ImpulseResponse;
  /** Below this the gate holds less than one period and the response is not to be trusted, Hz. */
  readonly lowestHz: number;
}

/**
 * The part of a response round an arrival: whole in the middle, halves of a Hann window at the
 * ends. The lowest frequency is one over the seconds from the arrival to the end of the gate, or of
 * the response where that comes first; what stands before the arrival tells nothing of the bass.
 * Throws RangeError when the arrival lies outside the response or a length or share out of range.
 * Common practice.
 */
export function gateResponse(ir: ImpulseResponse, options: GateOptions): GatedResponse {
  const { arrivalSeconds, beforeSeconds, afterSeconds, fade = 0.5 } = options;
  const { samples, sampleRate } = ir;
  const centre = arrivalIndex(ir, arrivalSeconds);
  if (!(beforeSeconds >= 0 && beforeSeconds < Infinity)) {
    throw new RangeError(`beforeSeconds must not be negative, got ${beforeSeconds}`);
  }
  if (!(afterSeconds > 0 && afterSeconds < Infinity)) {
    throw new RangeError(`afterSeconds must be positive, got ${afterSeconds}`);
  }
  if (!(fade >= 0 && fade <= 1)) throw new RangeError(`fade must lie in 0 … 1, got ${fade}`);
  const gated = samples.map((value, n) => {
    const seconds = (n - centre) / sampleRate;
    const along = seconds < 0 ? -seconds / beforeSeconds : seconds / afterSeconds;
    return value === 0 || along > 1 ? 0 : value * halfHann(along, fade);
  });
  const held = Math.min(afterSeconds, (samples.length - centre) / sampleRate);
  return { ir: { ...ir, samples: gated }, lowestHz: 1 / held };
}

/** 1 up to 1 − fade, then half a Hann window down to 0 at 1. */
function halfHann(along: number, fade: number): number {
  const into = fade > 0 ? Math.max((along - 1 + fade) / fade, 0) : 0;
  return 0.5 * (1 + Math.cos(Math.PI * Math.min(into, 1)));
}

/** Fractional index of an arrival. Throws RangeError when it lies outside the response. */
export function arrivalIndex(
  { samples, sampleRate, zeroIndex }: ImpulseResponse,
  arrivalSeconds: number,
): number {
  const index = zeroIndex + arrivalSeconds * sampleRate;
  if (!(index >= 0 && index <= samples.length - 1)) {
    throw new RangeError(`the arrival must lie within the response, got ${arrivalSeconds} s`);
  }
  return index;
}
