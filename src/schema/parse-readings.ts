import { msg, str } from '@lit/localize';
import type { Readings } from '../reading/reading';
import { layoutFromName } from '../system/layout';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { parseJson, type FileKind } from './parse-json';
import { readingsSchema } from './readings-schema';

const readings: FileKind = {
  get name() {
    return msg('set of readings');
  },
  format: 'leadline-readings',
  versions: [1],
  get advice() {
    return msg('Use what `leadline read` printed, as a whole.');
  },
};

/**
 * Reads the text of readings.json, with or without curves. Refuses, as a Trouble that says where
 * and why, what are no readings and what contradicts its own layout.
 */
export function parseReadings(text: string): Readings | Trouble {
  const parsed = parseJson<Readings>(text, readings, readingsSchema);
  if (isTrouble(parsed)) return parsed;
  const finding = findStranger(parsed);
  if (finding === null) return parsed;
  return trouble(
    'bad-file',
    msg(str`These readings contradict themselves: ${finding}. ${readings.advice}`),
  );
}

function findStranger({ layout: name, channels, reference }: Readings): string | null {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) return msg(str`their layout "${name}" means nothing`);
  const labels = layout.channels.map((channel) => channel.label);
  const read = channels.map((channel) => channel.channel);
  const stranger = [...read, reference].find((label) => !labels.includes(label));
  if (stranger) return msg(str`${stranger} is not a channel of layout ${name}`);
  const twice = read.find((label, index) => read.indexOf(label) !== index);
  return twice ? msg(str`channel ${twice} is there twice`) : null;
}
