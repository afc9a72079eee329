import fc from 'fast-check';
import type { ProposalChoices } from '../../../src/proposal/choices';
import { noChoices } from '../../../src/proposal/choices';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { ChannelLabel, GroupId } from '../../../src/system/channel';
import { groupIds } from '../../../src/system/group-ids';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { roomyBass } from './sample-bass';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { flatSum, sampleSheet } from './sample-sheet';

/** Any readings of some layouts, with numbers missing here and there. */
export function anyReadings(withBass: boolean): fc.Arbitrary<Readings> {
  const layout = fc.constantFrom('2.0', '2.1', '5.1', '5.2', '5.0.2', '7.1.4', '3.2');
  return layout.chain((name) => {
    const labels = layoutNamed(name).channels.map(({ label }) => label);
    return fc
      .tuple(...labels.map((label) => anyReading(label, withBass)))
      .map((all) => readingsOf(name, Object.fromEntries(all)));
  });
}

function anyReading(
  label: ChannelLabel,
  withBass: boolean,
): fc.Arbitrary<[ChannelLabel, Partial<ChannelReading>]> {
  const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const isSub = label.startsWith('Sub');
  const f6 = isSub ? number(16, 60) : number(25, 180);
  return fc
    .record({
      distanceMetres: fc.option(number(0.5, 9), { freq: 12 }),
      levelDb: fc.option(number(-45, -15), { freq: 12 }),
      f6: fc.option(f6, { freq: 8 }),
      ratio: number(1, 1.6),
      seed: fc.integer({ min: 1, max: 1e6 }),
      late: number(-0.004, 0.02),
      captured: fc.constantFrom(true, true, true, false),
      bassMarginDb: fc.option(number(0, 50)),
      polarity: fc.constantFrom('normal', 'inverted', 'cannot tell'),
    })
    .map(({ f6: f6Hz, ratio, seed, late, captured, ...numbers }) => [
      label,
      {
        ...numbers,
        polarity: numbers.polarity as ChannelReading['polarity'],
        rolloff: f6Hz === null ? null : rolloffAt(f6Hz * ratio, f6Hz),
        ...(withBass && captured ? { bass: roomyBass(late, seed) } : {}),
      },
    ]);
}

/** Any processor: plain, one crossover for all, only 80 Hz, small ranges, feet. */
export const anySheet: fc.Arbitrary<ProcessorSheet> = fc
  .record({
    stepsHz: fc.constantFrom([80], [40, 60, 80, 100, 120], [50, 80, 120, 150, 200, 250]),
    setting: fc.constantFrom('one for all' as const, 'per group' as const),
    lowPass: fc.constantFrom([80], [80, 120, 250], [60, 100, 150]),
    tied: fc.boolean(),
    lowCut: fc.constantFrom([], [15, 20, 30]),
    distance: fc.constantFrom(
      { unit: 'm' as const, step: 0.03, low: 0, high: 18 },
      { unit: 'm' as const, step: 0.3, low: 0.3, high: 3.6 },
      { unit: 'ft' as const, step: 0.5, low: 0, high: 40 },
    ),
    level: fc.constantFrom(
      { stepDb: 0.5, lowDb: -12, highDb: 12 },
      { stepDb: 1, lowDb: -0.5, highDb: 0.5 },
    ),
    flat: fc.boolean(),
  })
  .map(({ stepsHz, setting, lowPass, tied, lowCut, flat, ...scales }) =>
    sampleSheet({
      ...scales,
      crossover: { stepsHz, setting, limits: [] },
      subLowPass: { stepsHz: lowPass, notBelowHighestBedCrossover: tied },
      lowCut: { stepsHz: lowCut },
      ...(flat ? { filters: flatSum } : {}),
    }),
  );

/** Any choices of a tuner, steps among them that the processor may not have. */
export const anyChoices: fc.Arbitrary<ProposalChoices> = fc
  .record({
    fullRange: fc.subarray([...groupIds] as GroupId[], { maxLength: 2 }),
    bassPreferenceDb: fc.constantFrom(-3, 0, 0, 6),
    subLowPassHz: fc.constantFrom(null, 80, 120, 90),
    lowCutHz: fc.constantFrom(null, 'off' as const, 20, 30),
    fronts: fc.constantFrom(undefined, 80, 120, 95),
  })
  .map(({ fronts, ...choices }) => ({
    ...noChoices,
    ...choices,
    crossoverHz: fronts === undefined ? {} : { fronts },
  }));
