import { msg } from '@lit/localize';
import type { Arrival } from '../../dsp/timing/arrival';
import { findArrival } from '../../dsp/timing/find-arrival';
import type { GatheredSweeps } from './gather-sweeps';
import { gatherChannel, type TakeGround } from './read-one';
import { arrivalFromMarks } from './reference-arrival';
import type { Samples } from '../../dsp/signal/samples';

/** The reference speaker's sweeps and its arrival, by them or else by its marks. */
export interface ReferenceSweeps {
  readonly sweeps: GatheredSweeps;
  /** Null when neither tells it. */
  readonly arrival: Arrival | null;
}

/** Gathers the reference speaker of a take from the whole capture. */
export function gatherReference(ground: TakeGround, samples: Samples): ReferenceSweeps {
  const { schedule, clock } = ground;
  const byMarks = arrivalFromMarks(samples, clock, schedule);
  const gathered = gatherChannel(ground, schedule.reference, { samples, start: 0 });
  const sweeps = holdAgainstMarks(gathered, byMarks);
  return { sweeps, arrival: referenceArrival(sweeps) ?? byMarks };
}

/** The reference speaker's arrival in its own sweeps; null when they are damaged or too weak. */
function referenceArrival({ ir, mendedHz }: GatheredSweeps): Arrival | null {
  const arrival = ir && mendedHz === null ? findArrival(ir) : null;
  return arrival?.bandAdapted === false ? arrival : null;
}

/** The same speaker's marks and sweep arrive together, up to this. */
const slipSeconds = 0.4e-3;

/**
 * The reference's sweeps, spoilt when they do not arrive with its marks: audio was lost and put back
 * between the two. Every other speaker of the take is timed against it.
 */
function holdAgainstMarks(sweeps: GatheredSweeps, byMarks: Arrival | null): GatheredSweeps {
  const bySweep = referenceArrival(sweeps);
  if (!bySweep || !byMarks || byMarks.earlierPossible || bySweep.earlierPossible) return sweeps;
  if (Math.abs(bySweep.seconds - byMarks.seconds) <= slipSeconds) return sweeps;
  const sentence = msg(
    'Its sweep does not arrive with its marks: audio was lost and put back beside it. Repeat this segment.',
  );
  return {
    ...sweeps,
    ir: null,
    faults: [...sweeps.faults, { kind: 'lost', sentence }],
    spoilt: sentence,
  };
}
