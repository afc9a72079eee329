/**
 * Rooms that methods are tuned on, and may be looked at, have seeds from here on. Reported rooms
 * never reach them, whatever the count and kind.
 */
export const firstTuningSeed = 900_001;

/** Rooms that are reported, 10 000 apart from kind to kind: nothing is tuned on them. */
export const firstReportedSeed = 200_001;
