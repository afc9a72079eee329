import { msg, str } from '@lit/localize';
import { parseJson, type FileKind } from '../../schema/parse-json';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { findOutputContradiction } from './find-output-contradiction';
import { findRuleContradiction } from './find-rule-contradiction';
import { findSettingContradiction } from './find-setting-contradiction';
import type { ProcessorSheet } from './processor-sheet';
import { sheetSchema } from './sheet-schema';

const sheetFile: FileKind = {
  get name() {
    return msg('processor sheet');
  },
  format: 'leadline-processor',
  versions: [1],
  get advice() {
    return msg(
      'Begin with one of the invented samples and change that; sheet-format.md beside them tells every field.',
    );
  },
};

/**
 * Reads the text of a processor sheet. Refuses, as a Trouble that names the field, what is no
 * sheet and what contradicts itself.
 */
export function parseSheet(text: string): ProcessorSheet | Trouble {
  const sheet = parseJson<ProcessorSheet>(text, sheetFile, sheetSchema);
  if (isTrouble(sheet)) return sheet;
  const finding =
    findOutputContradiction(sheet) ??
    findRuleContradiction(sheet) ??
    findSettingContradiction(sheet);
  if (finding === null) return sheet;
  return trouble(
    'bad-file',
    msg(str`This processor sheet contradicts itself: ${finding}. Change the field in the file.`),
  );
}
