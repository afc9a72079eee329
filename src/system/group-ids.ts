import type { GroupId } from './channel';

/** The groups of speakers that share a crossover, in the order they are told. */
export const groupIds = [
  'fronts',
  'centre',
  'wides',
  'sides',
  'backs',
  'front heights',
  'middle heights',
  'back heights',
  'subs',
] as const satisfies readonly GroupId[];
