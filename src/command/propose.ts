import type { SeatReadings } from '../proposal/bass-field';
import { nothingChosen, type ProposalChoices } from '../proposal/choices';
import { defaultProcessorSteps } from '../proposal/default-processor-steps';
import { parseSteps } from '../proposal/parse-steps';
import type { ProcessorSteps } from '../proposal/proposal';
import { proposeSettings } from '../proposal/propose-settings';
import { settingsList } from '../proposal/settings-list';
import type { Readings } from '../reading/reading';
import { parseReadings } from '../schema/parse-readings';
import { layoutFromName } from '../system/layout';
import { parseSheet } from '../system/sheet/parse-sheet';
import type { ProcessorSheet } from '../system/sheet/processor-sheet';
import { stepsOf } from '../system/sheet/steps-of-sheet';
import { isTrouble, type Trouble } from '../trouble';
import { given, givenAll, type Command, type CommandIo, type GivenOptions } from './command';
import { numberOption } from './number-option';
import { inFile, readInputFile, textOf } from './input-files';

/** Turns readings into numbers to type. */
export const proposeCommand: Command = {
  name: 'propose',
  summary: 'Turns readings into crossovers, distances and level trims, each with its reason.',
  options: [
    {
      name: 'readings',
      value: 'FILE',
      about: 'what "read" printed; once more for every other seat',
      required: true,
      repeats: true,
    },
    { name: 'processor', value: 'FILE', about: "the processor's sheet, in place of --steps" },
    {
      name: 'bass-preference',
      value: 'DB',
      about: 'how much louder than level the subs shall be, -20 to 20',
      fallback: '0',
    },
    {
      name: 'equaliser-bands',
      value: 'N',
      about: 'parametric sections a channel may have, 0 to 20; 0 leaves it off',
      fallback: '0',
    },
    {
      name: 'steps',
      value: 'HZ,HZ,…',
      about: "the processor's steps",
      fallback: defaultProcessorSteps.crossoverHz.join(','),
    },
  ],
  notes: [
    'Prints a proposal per group of speakers and per channel, the subs, the bass ledger, the list to\ntype, and what is missing. A value that cannot be proposed is null; its reason says why.',
    'Distances and levels are those of the first readings, sums and subs those of all seats.',
  ],
  run: propose,
};

async function propose(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const processor = await readProcessor(options, io);
  if (isTrouble(processor)) return processor;
  const choices = readChoices(options);
  if (isTrouble(choices)) return choices;
  const seats: SeatReadings[] = [];
  for (const path of givenAll(options, 'readings')) {
    const readings = await readReadings(path, io);
    if (isTrouble(readings)) return readings;
    seats.push({ name: `Seat ${seats.length + 1}`, readings });
  }
  const [first, ...otherSeats] = seats;
  if (!first) throw new RangeError('readings must be given at least once, got none');
  const layout = layoutFromName(first.readings.layout);
  if (isTrouble(layout)) return layout;
  const { sheet, steps } = processor;
  const proposal = proposeSettings(first.readings, layout, steps, { sheet, otherSeats, choices });
  if (isTrouble(proposal)) return proposal;
  return { ...proposal, toType: settingsList(proposal, layout, sheet, {}) };
}

/** A processor as the options name it. */
export interface GivenProcessor {
  readonly sheet: ProcessorSheet | null;
  readonly steps: ProcessorSteps;
}

/** The sheet or the steps of the options. */
export async function readProcessor(
  options: GivenOptions,
  io: CommandIo,
): Promise<GivenProcessor | Trouble> {
  const crossoverHz = parseSteps(given(options, 'steps'));
  if (isTrouble(crossoverHz)) return crossoverHz;
  const path = options.get('processor');
  if (path === undefined) return { sheet: null, steps: { ...defaultProcessorSteps, crossoverHz } };
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const sheet = parseSheet(textOf(file));
  return isTrouble(sheet) ? inFile(path, sheet) : { sheet, steps: stepsOf(sheet) };
}

/** Readings from a file; a Trouble names it. */
export async function readReadings(path: string, io: CommandIo): Promise<Readings | Trouble> {
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const readings = parseReadings(textOf(file));
  return isTrouble(readings) ? inFile(path, readings) : readings;
}

function readChoices(options: GivenOptions): ProposalChoices | Trouble {
  const bassPreferenceDb = numberOption(options, 'bass-preference', {
    low: -20,
    high: 20,
    unit: 'dB',
  });
  if (isTrouble(bassPreferenceDb)) return bassPreferenceDb;
  const equaliserBands = numberOption(options, 'equaliser-bands', {
    low: 0,
    high: 20,
    whole: true,
  });
  if (isTrouble(equaliserBands)) return equaliserBands;
  return { ...nothingChosen, bassPreferenceDb, equaliserBands };
}
