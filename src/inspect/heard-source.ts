import type { SoundSource } from './inspection';
import type { TakeResponse } from './response-of-take';

/** A response, whose it is, and what was swept for it. */
export interface HeardSource {
  readonly source: SoundSource;
  readonly response: TakeResponse;
  /** The sweep's band, Hz. */
  readonly bandHz: readonly [number, number];
}
