import { proposeSettings } from '../proposal/propose-settings';
import { defaultProcessorSteps } from '../proposal/default-processor-steps';
import { readTake } from '../reading/read-take';
import { practiceRig } from '../rig/practice';
import { practiceTruth } from '../rig/practice-truth';
import { layoutFromName } from '../system/layout';
import { scheduleTake } from '../take/schedule-take';
import { isTrouble, type Trouble } from '../trouble';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { besideTruth } from './beside-truth';
import { numberOption } from './number-option';

/** The whole job in a simulated room, held against what is so there. */
export const practiceCommand: Command = {
  name: 'practice',
  summary: 'Does the whole job in a simulated room and prints truth beside estimate.',
  options: [
    { name: 'layout', value: 'NAME', about: 'bed.subs.heights, such as 5.2.4', required: true },
    {
      name: 'seed',
      value: 'N',
      about: 'which room; the same seed is the same room',
      fallback: '3',
    },
  ],
  notes: [
    'Nothing sounds. Every value has a "truth", an "estimate" (null when it cannot be told) and,\nwhere there is one, its 90 % "interval". The proposal stands at the end.',
  ],
  run: practise,
};

async function practise(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const layout = layoutFromName(given(options, 'layout'));
  if (isTrouble(layout)) return layout;
  const seed = numberOption(options, 'seed', { low: 0, high: 2 ** 31 - 1, whole: true });
  if (isTrouble(seed)) return seed;
  const { signal } = io;
  const schedule = scheduleTake(layout);
  const truth = practiceTruth(layout, seed);
  const capture = await practiceRig({ layout, seed }).play(schedule, {
    signal,
    onProgress: ({ progress }) => io.progress(`Take ${Math.round(100 * progress)} % simulated`),
  });
  if (isTrouble(capture)) return capture;
  const { temperatureCelsius, referenceDistanceMetres } = truth;
  const readings = await readTake(schedule, capture, {
    temperatureCelsius,
    referenceDistanceMetres,
    simulated: true,
    signal,
    onChannel: ({ channel }, progress) =>
      io.progress(`${channel} read, ${Math.round(100 * progress)} % done`),
  });
  if (isTrouble(readings)) return readings;
  const proposal = proposeSettings(readings, layout, defaultProcessorSteps);
  if (isTrouble(proposal)) return proposal;
  return { ...besideTruth(readings, truth), proposal };
}
