import { expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { readTake } from '../../../src/reading/read-take';
import type { Readings } from '../../../src/reading/reading';
import { practiceRig } from '../../../src/rig/practice';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { isTrouble } from '../../../src/trouble';
import { shortTake } from '../rig/short-take';
import { layoutNamed } from './sample-readings';
import { sampleSheet } from './sample-sheet';

const layout = layoutNamed('2.1');

async function takeAt(seed: number, seat: number): Promise<Readings> {
  const capture = await practiceRig({ layout, seed, seat }).play(shortTake, {
    signal: new AbortController().signal,
  });
  if (isTrouble(capture)) return expect.fail(capture.sentence);
  const { temperatureCelsius, referenceDistanceMetres } = practiceTruth(layout, seed);
  const options = { temperatureCelsius, referenceDistanceMetres, simulated: true };
  const readings = await readTake(shortTake, capture, options);
  return isTrouble(readings) ? expect.fail(readings.sentence) : readings;
}

it(
  'in practice rooms the sub, set at two seats, loses no more than by arrival',
  { timeout: 120_000 },
  async () => {
    for (const seed of [5, 6]) {
      const [here, there] = [await takeAt(seed, 0), await takeAt(seed, 1)];
      for (const { bass } of here.channels) expect(bass?.re).toHaveLength(241);
      const proposal = proposeSettings(here, layout, defaultProcessorSteps, {
        sheet: sampleSheet(),
        otherSeats: [{ name: 'Seat 2', readings: there }],
      });
      if (isTrouble(proposal)) return expect.fail(proposal.sentence);
      const alignment = proposal.subs?.alignment;
      expect(proposal.seats).toEqual(['Seat 1', 'Seat 2']);
      expect(alignment?.sum.lossDb).toBeLessThanOrEqual(alignment?.byArrival.lossDb ?? -1);
      expect(alignment?.sum.lossDb).toBeLessThan(2);
    }
  },
);
