import { readFileSync } from 'node:fs';
import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../src/trouble';

/** The invented processor of eleven outputs, changed as a test needs it. */
export function sampleSheet(changes: Partial<ProcessorSheet> = {}): ProcessorSheet {
  const text = readFileSync('public/processors/sample-11.json', 'utf8');
  const sheet = parseSheet(text);
  if (isTrouble(sheet)) throw new Error(sheet.sentence);
  return { ...sheet, ...changes };
}

/** Filters that add up in phase and flat without any delay (Linkwitz 1976). */
export const flatSum: ProcessorSheet['filters'] = {
  highPass: { family: 'Linkwitz-Riley', order: 4 },
  subLowPass: { family: 'Linkwitz-Riley', order: 4 },
};
