/**
 * The crossovers that can be weighed, Hz: half an octave to either side of each lies in what is kept
 * of a speaker's bass, 15 to 480 Hz, at least in part.
 */
export const crossoverRangeHz = [15, 500] as const;
