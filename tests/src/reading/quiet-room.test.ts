import { expect, it } from 'vitest';
import { readTake } from '../../../src/reading/read-take';
import type { Readings } from '../../../src/reading/reading';
import { systemTruth } from '../../../src/rig/practice-truth';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { briefLayout } from '../../accuracy/brief-take';
import { drawSystem } from '../../accuracy/draw-system';
import { hearTake } from '../../accuracy/hear-take';
import { expectClose } from '../../close';
import { layoutNamed } from '../proposal/sample-readings';

// In a simulated room so quiet, what it returns of a mark long after resembles one again.
it('reads a take in a room as quiet as no room is, as it does in one with noise', async () => {
  const seed = 900_004;
  const layout = briefLayout(layoutNamed('5.1.4'), seed);
  const schedule = scheduleTake(layout, { sweepSeconds: 0.7, averages: 1 });
  const system = drawSystem(layout, 'leaky', seed);
  const { record } = await hearTake(system, schedule, 0.65);
  const { temperatureCelsius, referenceDistanceMetres } = systemTruth(system, layout);
  const options = { temperatureCelsius, referenceDistanceMetres, simulated: true };
  const readAt = async (snrDb: number): Promise<Readings> => {
    const capture = { samples: record(snrDb), sampleRate: 48_000 };
    const read = await readTake(schedule, capture, options);
    if (isTrouble(read)) throw new Error(read.sentence);
    return read;
  };
  const levels = ({ channels }: Readings) => channels.map(({ levelDb }) => levelDb);
  const [usual, quiet] = [await readAt(40), await readAt(90)];
  expectClose(levels(quiet), levels(usual), 0.05);
  expect(quiet.clock.faults).toEqual([]);
});
