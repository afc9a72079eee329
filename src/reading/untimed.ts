import type { ChannelReading } from './reading';

/** The numbers of a reading that rest on its arrival, when there is none. */
export const untimed = {
  arrivalSeconds: null,
  arrivalInterval: null,
  distanceMetres: null,
  distanceInterval: null,
  ceilingPathMetres: null,
} as const;

/** The numbers of a reading that rest on its arrival. */
export type Timing = Pick<ChannelReading, keyof typeof untimed>;
