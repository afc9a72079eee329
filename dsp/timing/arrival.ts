/** First arrival in an impulse response. Indices are fractional positions in its samples. */
export interface Arrival {
  readonly index: number;
  /** Delay after the response's zero; negative before it. */
  readonly seconds: number;
  /** 90 % interval of `seconds`. */
  readonly interval: readonly [number, number];
  /** Strongest peak of the envelope; a reflected path may be stronger than the direct one. */
  readonly strongestIndex: number;
  readonly strongestSeconds: number;
  /** Level of the first arrival re the strongest peak, dB; 0 where they are the same. */
  readonly firstDb: number;
  /** Band the arrival was read in. */
  readonly bandHz: readonly [number, number];
  /** Whether that is another band than asked for, because the response carries nothing there. */
  readonly bandAdapted: boolean;
  /** Envelope at the strongest peak over the noise before the arrival, in that band, dB. */
  readonly bandMarginDb: number;
  /** Largest sample of the response near the arrival over the rms before it, whole band, dB. */
  readonly peakToNoiseDb: number;
  /** Noise hides whatever is more than 20 dB below the strongest peak or even stronger. */
  readonly earlierPossible: boolean;
}

export interface ArrivalOptions {
  readonly lowHz?: number;
  readonly highHz?: number;
}
