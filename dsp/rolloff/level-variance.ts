/** Variance of the level between microphone and passband, dB²: left free. */
export const LEVEL_VARIANCE = 20 ** 2;
