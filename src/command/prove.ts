import { judgeProof } from '../proof/judge-proof';
import { settingsToProve } from '../proof/settings-to-prove';
import { defaultProcessorSteps } from '../proposal/default-processor-steps';
import { proposeSettings } from '../proposal/propose-settings';
import { joinReadings } from '../reading/join-readings';
import type { Readings } from '../reading/reading';
import { parseSettings } from '../schema/parse-settings';
import type { Layout } from '../system/channel';
import { usualFilters } from '../system/declared-settings';
import { layoutFromName } from '../system/layout';
import type { ProcessorSettings } from '../system/processor-settings';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { given, givenAll, type Command, type CommandIo, type GivenOptions } from './command';
import { inFile, readInputFile, textOf } from './input-files';
import { readProcessor, readReadings, type GivenProcessor } from './propose';

/** Judges what was typed by readings before and after. */
export const proveCommand: Command = {
  name: 'prove',
  summary: 'Judges typed settings by readings before and through the processor, line by line.',
  options: [
    {
      name: 'before',
      value: 'FILE',
      about: 'what "read" printed of the system as it is',
      required: true,
    },
    {
      name: 'after',
      value: 'FILE',
      about: 'what "read" printed of a take of "stimulus --prove"; once more for repeats',
      required: true,
      repeats: true,
    },
    { name: 'processor', value: 'FILE', about: "the processor's sheet, in place of --steps" },
    {
      name: 'steps',
      value: 'HZ,HZ,…',
      about: "the processor's steps",
      fallback: defaultProcessorSteps.crossoverHz.join(','),
    },
    {
      name: 'settings',
      value: 'FILE',
      about: 'what was typed; left out: what "propose" says to type',
    },
  ],
  notes: [
    'Prints a line per claim: "pass", "fail" with the setting to change, or "cannot tell" with what\nwould settle it. Both readings are of one microphone position, the second with nothing in force.',
    'Readings printed with --curves tell more: without them, whether a speaker is equalised cannot be\ntold.',
  ],
  run: prove,
};

async function prove(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const processor = await readProcessor(options, io);
  if (isTrouble(processor)) return processor;
  const before = await readReadings(given(options, 'before'), io);
  if (isTrouble(before)) return before;
  const layout = layoutFromName(before.layout);
  if (isTrouble(layout)) return layout;
  const takes: Readings[] = [];
  for (const path of givenAll(options, 'after')) {
    const readings = await readReadings(path, io);
    if (isTrouble(readings)) return readings;
    const refused = refuse(path, readings, layout);
    if (refused) return refused;
    takes.push(readings);
  }
  const typed = await readTyped(options, io, before, layout, processor);
  if (isTrouble(typed)) return typed;
  const proof = judgeProof({
    layout,
    typed,
    steps: processor.steps,
    before,
    after: joinReadings(takes),
  });
  return { ...proof, typed };
}

/** Readings that cannot prove anything of a layout. */
function refuse(path: string, { layout: name, inForce }: Readings, layout: Layout): Trouble | null {
  if (name !== layout.name) {
    const sentence = `It is of layout ${name}, and the readings before are of ${layout.name}. Give two of one layout.`;
    return trouble('bad-file', `${path}: ${sentence}`);
  }
  if (!inForce) return null;
  return trouble(
    'bad-file',
    `${path}: Settings in force were taken out of it, so that it proves nothing of them. Read it again without --in-force.`,
  );
}

async function readTyped(
  options: GivenOptions,
  io: CommandIo,
  before: Readings,
  layout: Layout,
  { sheet, steps }: GivenProcessor,
): Promise<ProcessorSettings | Trouble> {
  const path = options.get('settings');
  if (path === undefined) {
    const proposal = proposeSettings(before, layout, steps, { sheet });
    return isTrouble(proposal)
      ? proposal
      : settingsToProve(proposal, sheet?.filters ?? usualFilters);
  }
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const typed = parseSettings(textOf(file), layout);
  return isTrouble(typed) ? inFile(path, typed) : typed;
}
