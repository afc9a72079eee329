import { energyTimeCurve } from '../../dsp/decay/energy-time-curve';
import { stepResponse } from '../../dsp/decay/step-response';
import { arrivalOf } from './arrival-of';
import type { HeardSource } from './heard-source';
import type { TimeAnswer } from './inspection';

const energySpan = { fromSeconds: -0.01, toSeconds: 0.5 } as const;
const stepSpan = { beforeSeconds: 0.002, afterSeconds: 0.03 } as const;

/** Energy over time and step response of each speaker, from its own arrival on. */
export function answerTime(heard: readonly HeardSource[]): TimeAnswer {
  return {
    kind: 'time',
    curves: heard.map(({ source, response }) => {
      const { ir } = response;
      const arrivalSeconds = arrivalOf(response);
      const energy = energyTimeCurve(ir, { arrivalSeconds, ...energySpan });
      const step = stepResponse(ir, { arrivalSeconds, ...stepSpan });
      return {
        source,
        energy: { seconds: Array.from(energy.seconds), db: Array.from(energy.db) },
        step: { seconds: Array.from(step.seconds), level: Array.from(step.value) },
      };
    }),
  };
}
