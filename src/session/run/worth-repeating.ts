import type { Fault } from '../../reading/reading';
import type { ChannelLabel } from '../../system/channel';
import type { BenchState } from '../bench';

/** Playing again brings no sound to a dead speaker, and another gain is the tuner's to set back. */
const lasting: ReadonlySet<Fault['kind']> = new Set(['silent', 'gain']);

/** Damaged speakers that a repeat can mend without the tuner. */
export function worthRepeating({
  toRepeat,
  readings,
}: Pick<BenchState, 'toRepeat' | 'readings'>): ChannelLabel[] {
  return toRepeat.filter((label) => {
    const reading = readings?.channels.find(({ channel }) => channel === label);
    const faults = reading?.faults ?? [];
    return faults.length === 0 || faults.some(({ kind }) => !lasting.has(kind));
  });
}
