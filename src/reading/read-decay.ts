import { decayTime } from '../../dsp/response/decay-time';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';

const bassHz = 160;

/**
 * When the response has fallen 45 dB below its peak or into the noise, the slower of full band and
 * bass; null when one of them had not by the response's end.
 */
export function readDecay(ir: ImpulseResponse, noise: ImpulseResponse | null): number | null {
  const whole = decayTime(ir, { noise });
  const bass = decayTime(ir, { noise, belowHz: bassHz });
  return whole === null || bass === null ? null : Math.max(whole, bass);
}
