import { defaultProcessorSteps } from '../proposal/default-processor-steps';
import { parseSteps } from '../proposal/parse-steps';
import { proposeSettings } from '../proposal/propose-settings';
import { parseReadings } from '../schema/parse-readings';
import { layoutFromName } from '../system/layout';
import { isTrouble, type Trouble } from '../trouble';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { inFile, readInputFile, textOf } from './input-files';

/** Turns readings into numbers to type. */
export const proposeCommand: Command = {
  name: 'propose',
  summary: 'Turns readings into crossovers, distances and level trims, each with its reason.',
  options: [
    { name: 'readings', value: 'FILE', about: 'what "read" printed', required: true },
    {
      name: 'steps',
      value: 'HZ,HZ,…',
      about: "the processor's steps",
      fallback: defaultProcessorSteps.crossoverHz.join(','),
    },
  ],
  notes: [
    'Prints one proposal per group of speakers and one per channel. A value that cannot be proposed\nis null; its reason says why.',
  ],
  run: propose,
};

async function propose(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const crossoverHz = parseSteps(given(options, 'steps'));
  if (isTrouble(crossoverHz)) return crossoverHz;
  const path = given(options, 'readings');
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const readings = parseReadings(textOf(file));
  if (isTrouble(readings)) return inFile(path, readings);
  const layout = layoutFromName(readings.layout);
  if (isTrouble(layout)) return inFile(path, layout);
  return proposeSettings(readings, layout, { ...defaultProcessorSteps, crossoverHz });
}
