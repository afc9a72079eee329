/** Levels over time and frequency. */
export interface LevelPictureData {
  /** Rising, evenly spaced in log frequency. */
  readonly hz: ArrayLike<number>;
  /** Rising, evenly spaced. */
  readonly seconds: ArrayLike<number>;
  /** Level at hz[k], seconds[i] is db[k · seconds.length + i]; not above 0. */
  readonly db: ArrayLike<number>;
  /** Levels at and below this are drawn as nothing. */
  readonly lowestDb: number;
}
