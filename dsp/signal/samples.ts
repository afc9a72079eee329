/** Audio as it was captured, in 32 bits, or as it was worked out. */
export type Samples = Float32Array | Float64Array;
