import { createMemory } from '../memory';

/** What the tuner wants of a climb, beside the cap, which the document keeps. */
export interface ClimbWishes {
  readonly marginDb: number;
  readonly useTarget: boolean;
  readonly targetDb: number;
}

export const climbWishes = createMemory<ClimbWishes>(() => ({
  marginDb: 25,
  useTarget: false,
  targetDb: 75,
}));
