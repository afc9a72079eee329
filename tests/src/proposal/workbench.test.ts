import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { predictCurves } from '../../../src/proposal/predict-group';
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
    const { field, abilities } = bench;
    if (!field) return expect.fail('no bass');
    const settings = (later: number) => ({
      crossoverHz: { fronts: 80 },
      distanceMetres: { FL: 2, FR: 2, 'Sub 1': 2 - 343 * later },
      trimDb: {},
      inverted: [],
      subLowPassHz: null,
      lowCutHz: null,
      metresPerSecond: 343,
    });
    // Linkwitz-Riley sides at the crossover: each 0.5, together |1 + e^(−iφ)|/2 = cos(φ/2).
    const levelAt80 = (later: number): number => {
      const sum = predictCurves(field, 'FL', 80, abilities, settings(later));
      const k = field.hz.findIndex((f) => f >= 80 * 0.999);
      return sum?.seats[0]?.sumDb[k] ?? NaN;
    };
    const f = field.hz[field.hz.findIndex((one) => one >= 80 * 0.999)] ?? 0;
    expectClose(levelAt80(0), 0, 0.01);
    expectClose(levelAt80(0.002), 20 * Math.log10(Math.cos(Math.PI * f * 0.002)), 0.02);
    const { sums } = recompute(bench, settings(0.002), ['fronts']);
    expect(sums[0]?.sum.lossDb).toBeGreaterThan(1);
    expect(recompute(bench, settings(0), ['centre']).sums).toEqual([]);
  });
});
