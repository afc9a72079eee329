/**
 * Rooms that methods are tuned on, and may be looked at, have seeds from here on. Reported rooms
 * never reach them, whatever the count and kind.
 */
export const firstTuningSeed = 900_001;

/**
 * Rooms that are reported: nothing is tuned on them. Rooms from 200 001 on were reported while the
 * limits were set, and are seen; these were first heard after all of that was done.
 */
export const firstReportedSeed = 400_001;

/** Kinds of room have seeds so far apart. */
export const seedsOfAKind = 10_000;
