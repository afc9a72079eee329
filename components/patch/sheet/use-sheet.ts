import { msg } from '@lit/localize';
import type { Bench } from '../../../src/session/bench';
import type { SessionDocument } from '../../../src/session/document';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { stepsOf } from '../../../src/system/sheet/steps-of-sheet';

/** Makes a sheet the session's, under a name that undo can show. */
export function useSheet(bench: Bench | null, sheet: ProcessorSheet): void {
  bench?.change(msg('Choose the processor'), (document) => withSheet(document, sheet));
}

/** Goes on without a sheet; the steps in use stay. */
export function dropSheet(bench: Bench | null): void {
  bench?.change(msg('Forget the processor'), (document) => ({ ...document, sheet: null }));
}

/** What was heard on other outputs says nothing of these, and a crossover must be one of its steps. */
function withSheet(document: SessionDocument, sheet: ProcessorSheet): SessionDocument {
  const { stepsHz } = sheet.crossover;
  const chosen = Object.entries(document.chosenCrossoverHz);
  return {
    ...document,
    sheet,
    processor: stepsOf(sheet),
    earAnswers: sameOutputs(document.sheet, sheet) ? document.earAnswers : {},
    chosenCrossoverHz: Object.fromEntries(chosen.filter(([, hz]) => stepsHz.includes(hz))),
  };
}

/** Whether both wire in the same way; a sheet for what was there without one changes no plug. */
function sameOutputs(one: ProcessorSheet | null, other: ProcessorSheet): boolean {
  if (one === null) return true;
  const rules = ({ outputs, pairs, exclusive, filling, heightNaming }: ProcessorSheet) =>
    JSON.stringify([outputs, pairs, exclusive, filling, heightNaming]);
  return rules(one) === rules(other);
}
