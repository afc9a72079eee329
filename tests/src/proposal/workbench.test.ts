import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { recompute, workbenchOf } from '../../../src/proposal/workbench';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { pureBass, roomyBass } from './sample-bass';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { flatSum, sampleSheet } from './sample-sheet';

const layout = layoutNamed('2.1');
const sheet = sampleSheet({
  filters: flatSum,
  subLowPass: { stepsHz: [20000], notBelowHighestBedCrossover: true },
});

describe('what is recomputed as a setting is dragged', () => {
  it('agrees with the proposal where nothing was dragged', () => {
    const readings = readingsOf('2.1', {
      FL: { bass: roomyBass(0, 3) },
      FR: { bass: roomyBass(0.001, 4) },
      'Sub 1': { bass: roomyBass(0.004, 5), rolloff: rolloffAt(25, 22) },
    });
    const proposal = proposeSettings(readings, layout, defaultProcessorSteps, { sheet });
    if (isTrouble(proposal)) return expect.fail(proposal.sentence);
    const bench = workbenchOf(readings, layout, defaultProcessorSteps, { sheet });
    const { sums, ledger } = recompute(bench, proposal.settings);
    expect(sums).toEqual([{ group: 'fronts', sum: proposal.subs?.alignment?.sum }]);
    expect(ledger.map(({ name, lossDb }) => [name, lossDb])).toEqual(
      proposal.ledger.proposed.lines.map(({ channel, lossDb }) => [channel, lossDb]),
    );
  });

  it('loses what two equal sides lose that are out of step at a crossover', () => {
    const sound = { bass: pureBass(0), distanceMetres: 2 };
    const readings = readingsOf('2.1', {
      FL: sound,
      FR: sound,
      'Sub 1': { ...sound, rolloff: rolloffAt(25, 22) },
    });
    const bench = workbenchOf(readings, layout, defaultProcessorSteps, { sheet });
    const settings = (later: number) => ({
      crossoverHz: { fronts: 80 },
      distanceMetres: { FL: 2, FR: 2, 'Sub 1': 2 - 343 * later },
      trimDb: {},
      inverted: [],
      subLowPassHz: null,
      lowCutHz: null,
      metresPerSecond: 343,
    });
    // Linkwitz-Riley sides w⁴/(1 + w⁴) and 1/(1 + w⁴) are in phase, w = f/80 Hz. Later by τ the sum
    // is 1 − 2·high·low·(1 − cos 2πfτ) of what it could be, averaged over log f from 80/√2 to 80√2.
    const lossDb = (later: number): number => {
      const steps = 2000;
      let sum = 0;
      for (let n = 0; n < steps; n++) {
        const w = 2 ** ((n + 0.5) / steps - 0.5);
        const product = w ** 4 / (1 + w ** 4) ** 2;
        sum += 1 - 2 * product * (1 - Math.cos(2 * Math.PI * 80 * w * later));
      }
      return -10 * Math.log10(sum / steps);
    };
    const lost = (later: number): number =>
      recompute(bench, settings(later), ['fronts']).sums[0]?.sum.lossDb ?? NaN;
    expectClose(lost(0), 0, 0.01);
    for (const later of [0.001, 0.002, 0.004]) expectClose(lost(later), lossDb(later), 0.03);
    expect(recompute(bench, settings(0), ['centre']).sums).toEqual([]);
  });
});
