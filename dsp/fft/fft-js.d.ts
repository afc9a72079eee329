declare module 'fft.js' {
  /** Radix-4 transform of a power-of-two size above 1; arrays hold interleaved re, im. */
  export default class FFT {
    constructor(size: number);
    transform(out: Float64Array, data: Float64Array): void;
  }
}
