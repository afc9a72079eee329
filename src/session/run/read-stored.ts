import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { TakeRecord } from '../document';
import { loadAudio, readRecord } from './read-record';

/** Reads all takes of this layout that were captured but not read, oldest first. */
export async function readUnread(desk: Desk): Promise<void> {
  const unread = takesOfLayout(desk).filter((take) => take.readings === null);
  if (unread.length === 0) return;
  await desk.run('Reading the stored take', (signal) => readStored(desk, unread, signal));
}

/** Reads the real takes of this layout again, such as with another calibration. */
export function readAgain(desk: Desk, signal: AbortSignal): Promise<Trouble | null> {
  const real = takesOfLayout(desk).filter((take) => !take.simulated && take.readings !== null);
  return readStored(desk, real, signal);
}

function takesOfLayout(desk: Desk): TakeRecord[] {
  const { takes, layout } = desk.state.document;
  return takes.filter(({ schedule }) => schedule.layout === layout);
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
    problem = failed ?? problem;
  }
  return problem;
}

function gone({ startedAt }: TakeRecord): Trouble {
  return trouble(
    'storage',
    `The recording of the take of ${startedAt} is no longer in this browser, so it cannot be read again. Repeat that take.`,
  );
}
