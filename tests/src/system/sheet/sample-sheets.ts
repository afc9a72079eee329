import { readFileSync } from 'node:fs';
import { parseSheet } from '../../../../src/system/sheet/parse-sheet';
import type { ProcessorSheet } from '../../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../../src/trouble';

export const sampleNames = ['sample-7', 'sample-11', 'sample-16'] as const;

/** Text of a sample sheet that is served with the bench. */
export function sampleText(name: (typeof sampleNames)[number]): string {
  return readFileSync(
    new URL(`../../../../public/processors/${name}.json`, import.meta.url),
    'utf8',
  );
}

/** A sample sheet as the bench reads it. */
export function sampleSheet(name: (typeof sampleNames)[number]): ProcessorSheet {
  const sheet = parseSheet(sampleText(name));
  if (isTrouble(sheet)) throw new Error(sheet.sentence);
  return sheet;
}
