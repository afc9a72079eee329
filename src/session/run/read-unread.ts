import { isTrouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import { loadAudio, readRecord } from './read-record';

/** Reads all takes of this layout that were captured but not read, oldest first. */
export async function readUnread(desk: Desk): Promise<void> {
  const { takes, layout } = desk.state.document;
  const unread = takes.filter((take) => take.readings === null && take.schedule.layout === layout);
  if (unread.length === 0) return;
  await desk.run('Reading the stored take', async (signal) => {
    let problem: Trouble | null = null;
    for (const record of unread) {
      if (signal.aborted) break;
      const audio = await loadAudio(desk, record);
      if (audio === null) continue;
      const failed = isTrouble(audio) ? audio : await readRecord(desk, record, audio, signal);
      problem = failed ?? problem;
    }
    return problem;
  });
}
