import { crossoverCandidates } from '../../dsp/bass/crossover-candidates';
import { crossoverF6Hz } from '../../dsp/bass/crossover-rules';
import { predictSum } from '../../dsp/bass/predict-sum';
import { fitRolloffTogether, isRefusal } from '../../dsp/rolloff/fit-rolloff';
import { rolloffBands } from '../../dsp/rolloff/rolloff-bands';
import { arrivalDelay, directDelayAt, far, filtersAt, near, stepsHz } from './bass-ground';
import { hz, type BassScene } from './bass-scene';
import { responseThrough } from './rolloff-transfers';

/** A main's sum with the sub as it is proposed. */
export interface ProposedSum {
  readonly crossoverHz: number;
  /** Mean over the measured seats, and over the others, dB. */
  readonly lossDb: number;
  readonly elsewhereDb: number;
  /** From the delay that lines the direct sounds up. */
  readonly offPeriods: number;
}

/** The step that is proposed for the main as it is read at the measured seats, and its sum. */
export function measureProposed(scene: BassScene): ProposedSum {
  const { main, mainRooms, subs } = scene;
  const [sub] = subs;
  const fit = fitRolloffTogether(
    mainRooms.map((room) => ({
      bands: rolloffBands(responseThrough(room, main.model), null),
      speaker: '',
    })),
    {},
  );
  const read = isRefusal(fit)
    ? { f3Hz: null, f6UpperHz: null }
    : { f3Hz: fit.f3Hz.median, f6UpperHz: crossoverF6Hz(fit.f6Upper80Hz, fit.f6Hz.high) };
  const { candidates } = crossoverCandidates(
    [{ name: '', ...read, lowest: null, seats: near(main.seats) }],
    { seats: near(sub.seats), upperHz: null, ...arrivalDelay(scene) },
    { hz, stepsHz, filters: filtersAt, isBed: true },
  );
  const [best] = candidates;
  if (!best?.sum) throw new RangeError('a scene has a sum at every step');
  const { highPass, lowPass } = filtersAt(best.stepHz);
  const { delaySeconds, inverted } = best.sum;
  const loss = (all: typeof near): number =>
    predictSum(all(main.seats), all(sub.seats), {
      hz,
      crossoverHz: best.stepHz,
      main: { filters: highPass },
      sub: { filters: lowPass, delaySeconds, inverted },
    }).lostDb;
  return {
    crossoverHz: best.stepHz,
    lossDb: loss(near),
    elsewhereDb: loss(far),
    offPeriods: Math.abs(delaySeconds - directDelayAt(scene, best.stepHz)) * best.stepHz,
  };
}
