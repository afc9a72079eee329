import { excessPhase } from '../../dsp/decay/excess-phase';
import { groupDelay } from '../../dsp/decay/group-delay';
import { logGrid } from '../../dsp/response/smoothing';
import { arrivalOf } from './arrival-of';
import type { HeardSource } from './heard-source';
import type { PhaseAnswer } from './inspection';

const rangeHz = [15, 20_000] as const;
const pointsPerOctave = 24;
const fraction = 6;

/** Group delay and excess phase after each speaker's own arrival; null in the noise. */
export function answerPhase(heard: readonly HeardSource[]): PhaseAnswer {
  const hz = Array.from(logGrid(rangeHz[0], rangeHz[1], pointsPerOctave));
  return {
    kind: 'phase',
    hz,
    curves: heard.map(({ source, response, bandHz }) => {
      const { ir, noise } = response;
      const arrivalSeconds = arrivalOf(response);
      const { degrees } = excessPhase(ir, hz, arrivalSeconds, { noise, bandHz });
      return {
        source,
        groupDelay: groupDelay(ir, hz, { noise, arrivalSeconds, fraction }),
        excessPhase: degrees,
      };
    }),
  };
}
