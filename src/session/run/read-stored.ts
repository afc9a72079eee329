import { msg, str } from '@lit/localize';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { SessionDocument, TakeRecord } from '../document';
import { runNames } from '../run-names';
import { withReadings } from '../take-record';
import { loadAudio, readRecord } from './read-record';

/**
 * Reads all takes of this layout that were captured but not read, and all whose readings are
 * outdated, oldest first.
 */
export async function readUnread(desk: Desk): Promise<void> {
  const { takes, layout } = desk.state.document;
  const unread = takes.filter(
    (take) => isOutdated(take) || (take.readings === null && take.schedule.layout === layout),
  );
  if (unread.length === 0) return;
  await desk.run(runNames.storedTake(), (signal) => readStored(desk, unread, signal));
}

/** Reads again all takes whose readings are outdated, when there are any. */
export async function readOutdated(desk: Desk): Promise<void> {
  if (!desk.state.document.takes.some(isOutdated)) return;
  await desk.run(runNames.takesAgain(), (signal) => readAgain(desk, signal));
}

/** Reads again all takes whose readings are outdated. */
export function readAgain(desk: Desk, signal: AbortSignal): Promise<Trouble | null> {
  return readStored(desk, desk.state.document.takes.filter(isOutdated), signal);
}

/** Whether a change of the document shows takes that want to be read and did not before. */
export function leavesUnread(before: SessionDocument, after: SessionDocument): boolean {
  const wants = (take: TakeRecord): boolean => take.readings === null || isOutdated(take);
  const known = new Set(before.takes.filter(wants).map(({ id }) => id));
  return after.takes.some((take) => wants(take) && !known.has(take.id));
}

function isOutdated({ readings, outdated }: TakeRecord): boolean {
  return readings !== null && outdated === true;
}

/** One that cannot be read does not keep the others from it; the last such trouble is given. */
async function readStored(
  desk: Desk,
  takes: readonly TakeRecord[],
  signal: AbortSignal,
): Promise<Trouble | null> {
  let problem: Trouble | null = null;
  for (const record of takes) {
    if (signal.aborted) break;
    const audio = await loadAudio(desk, record);
    const failed =
      audio === null
        ? gone(record)
        : isTrouble(audio)
          ? audio
          : await readRecord(desk, record, audio, signal);
    if (failed && failed.trouble !== 'stopped' && isOutdated(record)) {
      desk.change((document) => withOldReadings(document, record));
    }
    problem = failed ?? problem;
  }
  return problem;
}

/** Shows the readings there were, and says so in them, when they cannot be made again. */
function withOldReadings(document: SessionDocument, { id, readings }: TakeRecord): SessionDocument {
  if (!readings) return document;
  const notes = [...new Set([...readings.notes, oldNote()])];
  return withReadings(document, id, { ...readings, notes });
}

const oldNote = () =>
  msg(
    'This take could not be read again after the calibration, the conditions or the settings in force were changed: its readings are those from before. Repeat the take.',
  );

function gone({ startedAt }: TakeRecord): Trouble {
  return trouble(
    'storage',
    msg(
      str`The recording of the take of ${startedAt} is no longer in this browser, so it cannot be read again. Repeat that take.`,
    ),
  );
}
