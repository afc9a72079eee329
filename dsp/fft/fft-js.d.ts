declare module 'fft.js' {
  /** Radix-4 transform of a power-of-two size above 1; arrays hold interleaved re, im. */
  export default class FFT {
    constructor(size: number);
    /** e^(−2πik/size), k = 0 … size − 1, interleaved re, im. */
    readonly table: readonly number[];
    transform(out: Float64Array, data: Float64Array): void;
  }
}
