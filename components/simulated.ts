import type { BenchState } from '../src/session/bench';

/** True when what is on screen, or what would be played next, is not a real room. */
export function isSimulated(state: BenchState): boolean {
  return state.document.rig === 'practice' || state.readings?.simulated === true;
}
