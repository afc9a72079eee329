import type { BenchState } from '../session/bench';

/** What a handover is gathered from. */
export type HandedOver = Pick<
  BenchState,
  'document' | 'layout' | 'proposal' | 'proof' | 'readings'
>;
