import type { NoiseRequest } from './noise-state';
import type { NoiseNews } from './noise-orders';

/** One running average; what hears. */
export interface NoiseEar {
  push(samples: Float32Array): void;
  gap(frames: number): void;
  setGain(gainDb: number): void;
  /** Resolution and averaging time; the average goes on. */
  show(request: NoiseRequest): void;
  news(): NoiseNews;
}
