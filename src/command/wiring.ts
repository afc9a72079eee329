import { layoutFromName } from '../system/layout';
import { parseSheet } from '../system/sheet/parse-sheet';
import { wireLayout } from '../system/wiring/wire-layout';
import { isTrouble, type Trouble } from '../trouble';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { inFile, readInputFile, textOf } from './input-files';

/** Finds which speaker goes on which output of a processor. */
export const wiringCommand: Command = {
  name: 'wiring',
  summary: 'Finds which speaker goes on which output of a processor, or why it cannot be.',
  options: [
    { name: 'layout', value: 'NAME', about: 'the layout, such as 5.2.4', required: true },
    { name: 'processor', value: 'FILE', about: 'a processor sheet (JSON)', required: true },
  ],
  notes: [
    'Prints each output in use with its channel as declared, and the role it plays in the processor.\nA layout that cannot be wired is an answer too: "wired" is false, "conflicts" names rules and\noutputs, "nearest" the layouts that can be wired, fewest changes first.',
  ],
  run: wiring,
};

async function wiring(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const layout = layoutFromName(given(options, 'layout'));
  if (isTrouble(layout)) return layout;
  const path = given(options, 'processor');
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const sheet = parseSheet(textOf(file));
  if (isTrouble(sheet)) return inFile(path, sheet);
  const answer = wireLayout(layout, sheet);
  const about = { layout: layout.name, processor: sheet.name, invented: sheet.invented };
  if (answer.wired) return { wired: true, ...about, outputs: answer.outputs };
  const nearest = answer.nearest.map(({ name }) => name);
  return { wired: false, ...about, conflicts: answer.conflicts, nearest };
}
