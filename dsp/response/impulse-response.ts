/** A measured or modelled impulse response; samples[zeroIndex] stands at zero delay. */
export interface ImpulseResponse {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly zeroIndex: number;
}

/** Delay of a (fractional) index in seconds; negative before zero delay. */
export function delaySeconds(ir: ImpulseResponse, index: number): number {
  return (index - ir.zeroIndex) / ir.sampleRate;
}
