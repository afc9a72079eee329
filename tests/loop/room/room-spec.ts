/** A loudspeaker as the loop's room plays it. */
export interface SpeakerSpec {
  /** Which output of the virtual interface feeds it, from 0. */
  readonly output: number;
  /** Metres; x to the front, y to the left, z up, from the rear right floor corner. */
  readonly position: readonly [number, number, number];
  readonly box: ClosedBox | VentedBox;
  /** Second-order low-pass twice (Linkwitz-Riley 4), for subs. */
  readonly lowPassHz?: number;
  readonly inverted?: boolean;
  readonly gainDb?: number;
  /** Electronic delay inside the speaker, beside its path through the air. */
  readonly delaySeconds?: number;
}

/** Second-order high-pass. */
export interface ClosedBox {
  readonly kind: 'closed';
  readonly resonanceHz: number;
  readonly q: number;
}

/** Fourth-order Butterworth high-pass. */
export interface VentedBox {
  readonly kind: 'vented';
  readonly tuningHz: number;
}

/** Everything the room between the virtual output and the virtual microphone does. Plain JSON. */
export interface RoomSpec {
  readonly sampleRate: number;
  /** Shoebox, metres along x, y, z. */
  readonly size: readonly [number, number, number];
  readonly microphone: readonly [number, number, number];
  /** Reflectance of pressure of every surface, at low and at high frequencies. */
  readonly reflectance: readonly [number, number];
  readonly celsius: number;
  /** Level of one speaker's direct sound at 1 m, dB re its signal. */
  readonly gainDb: number;
  /** Rms of the microphone's noise, dB re full scale. */
  readonly noiseDb: number;
  /** Microphone clock against output clock: captured = played × (1 + skewPpm·10⁻⁶). */
  readonly skewPpm: number;
  readonly speakers: readonly SpeakerSpec[];
  readonly seed: number;
}
