import { saidIn } from '../../locale/said-in';
import { isTrouble } from '../../trouble';
import type { Desk } from '../desk';
import type { TakeRecord } from '../document';
import { runNames } from '../run-names';
import { withChangedTake } from '../take-record';
import { loadAudio, readRecord } from './read-record';

/**
 * Reads again all takes whose sentences are in another language or in other units than those now in
 * force: the numbers come out as they were, the sentences in today's. Not while anything runs, nor in
 * a page that only follows another. Where the recording is gone the sentences stay as they are, and
 * nothing is said; what was stopped is done another time.
 */
export async function sayAgain(desk: Desk): Promise<void> {
  if (desk.closed !== null || !desk.state.document.takes.some(isSaidElse)) return;
  await desk.run(runNames.wordsAgain(), async (signal) => {
    desk.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
    for (const record of desk.state.document.takes.filter(isSaidElse)) {
      const said = await sayOne(desk, record, signal);
      if (signal.aborted) return null;
      if (!said) desk.change((document) => withChangedTake(document, record.id, leaveWords));
    }
    return null;
  });
}

/** Whether the sentences of a take are known to be written otherwise than they would be now. */
export function isSaidElse({ readings, outdated, saidIn: as }: TakeRecord): boolean {
  return readings !== null && outdated !== true && as !== undefined && as !== saidIn();
}

async function sayOne(desk: Desk, record: TakeRecord, signal: AbortSignal): Promise<boolean> {
  const audio = await loadAudio(desk, record);
  if (audio === null || isTrouble(audio)) return false;
  return (await readRecord(desk, record, audio, signal)) === null;
}

/** Nobody knows any longer what the sentences are in: they are left alone. */
function leaveWords(take: TakeRecord): TakeRecord {
  return { ...take, saidIn: undefined };
}
