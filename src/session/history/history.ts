import { captureIdsOf } from '../capture-ids';
import type { SessionDocument } from '../document';
import { carryChange } from './carry-change';

/** One change of a document, or several that belong together. */
export interface Step {
  readonly name: string;
  /** The run whose changes it gathers; null for what a person changed. */
  readonly run: number | null;
  /** When it was last added to, milliseconds of a clock that never goes back. */
  readonly at: number;
  readonly parts: readonly Part[];
}

interface Part {
  readonly before: SessionDocument;
  readonly after: SessionDocument;
}

/** What can be undone and done again, each with the newest last. Documents share what is alike. */
export interface History {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** A history in which nothing has happened. */
export const noHistory: History = { past: [], future: [] };

/** Most steps that are kept; the oldest go first. */
export const mostSteps = 100;

/** Changes of one name that follow within so many milliseconds are one step, such as a drag. */
export const oneGestureMilliseconds = 1000;

/** The history after a named change, or after another change of a run that is still going on. */
export function noteStep(history: History, change: Omit<Step, 'parts'> & Part): History {
  const { name, run, at, before, after } = change;
  const index = history.past.findLastIndex((step) => belongs(step, change, history));
  const known = history.past[index];
  if (known) {
    const step = { ...known, at, parts: addPart(known.parts, { before, after }) };
    return { ...history, past: history.past.with(index, step) };
  }
  const step = { name, run, at, parts: [{ before, after }] };
  return { past: [...history.past, step].slice(-mostSteps), future: [] };
}

/** The document before the newest step, and the history then; null when there is none. */
export function undoStep(history: History, present: SessionDocument): Moved | null {
  const step = history.past.at(-1);
  if (!step) return null;
  const document = step.parts.reduceRight(
    (now, { before, after }) => carryChange(now, after, before),
    present,
  );
  const past = history.past.slice(0, -1);
  return { document, history: { past, future: [...history.future, step] } };
}

/** The document with the step that was undone last, and the history then; null when there is none. */
export function redoStep(history: History, present: SessionDocument): Moved | null {
  const step = history.future.at(-1);
  if (!step) return null;
  const document = step.parts.reduce(
    (now, { before, after }) => carryChange(now, before, after),
    present,
  );
  const future = history.future.slice(0, -1);
  return { document, history: { past: [...history.past, step], future } };
}

export interface Moved {
  readonly document: SessionDocument;
  readonly history: History;
}

/** All captures that a step of the history could bring back. */
export function capturesOfHistory({ past, future }: History): Set<string> {
  const documents = [...past, ...future].flatMap(({ parts }) =>
    parts.flatMap(({ before, after }) => [before, after]),
  );
  return new Set(documents.flatMap(captureIdsOf));
}

function belongs(step: Step, next: Omit<Step, 'parts'>, { past, future }: History): boolean {
  if (next.run !== null) return step.run === next.run;
  const isNewest = step === past.at(-1) && future.length === 0;
  const isSoon = next.at - step.at < oneGestureMilliseconds;
  return isNewest && step.run === null && step.name === next.name && isSoon;
}

/** What follows without a gap is one part with the one before it. */
function addPart(parts: readonly Part[], next: Part): Part[] {
  const last = parts.at(-1);
  if (last?.after !== next.before) return [...parts, next];
  return [...parts.slice(0, -1), { before: last.before, after: next.after }];
}
