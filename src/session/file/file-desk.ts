import { msg } from '@lit/localize';
import { isTrouble } from '../../trouble';
import type { Desk, Work } from '../desk';
import type { Sessions, SessionsState } from '../shelf/sessions';
import { lateFiles } from './late-files';

/** Saving and opening files on a desk; `run` runs one thing, `show` changes what is shown of it. */
export function createFileDesk(
  desk: Desk,
  run: (what: string, work: Work) => Promise<void>,
  show: (changes: Partial<SessionsState>) => void,
): Pick<Sessions, 'saveFile' | 'openFile' | 'compareWithFile'> {
  const { store } = desk.parts;

  function showFile(what: 'Saving' | 'Opening'): (progress: number) => void {
    return (progress) => show({ file: { what, progress } });
  }

  return {
    async saveFile() {
      const made: { file: { name: string; blob: Blob } | null } = { file: null };
      const { document } = desk.state;
      await run(msg('Saving the file'), async (signal) => {
        const files = await lateFiles.load();
        if (isTrouble(files)) return files;
        const { sessionFileName, writeSessionFile } = files;
        const savedAt = desk.parts.now();
        const onProgress = showFile('Saving');
        const written = await writeSessionFile(document, store, { savedAt, signal, onProgress });
        if (isTrouble(written)) return written;
        made.file = { name: sessionFileName(document.name), blob: written };
        return null;
      });
      show({ file: null });
      return made.file;
    },
    async openFile(file) {
      await run(msg('Opening the file'), async (signal) => {
        const onProgress = showFile('Opening');
        onProgress(0);
        const files = await lateFiles.load();
        if (isTrouble(files)) return files;
        const { placeSession, readSessionFile } = files;
        const opened = await readSessionFile(file, signal);
        if (isTrouble(opened)) return opened;
        const refused = desk.refuses(opened.document);
        if (refused) return refused;
        const { newId } = desk.parts;
        const placed = await placeSession(store, opened, { newId, signal, onProgress });
        if (isTrouble(placed)) return placed;
        desk.adopt(placed.document);
        if (placed.problem) desk.showUnsaved(placed.problem);
        return placed.problem;
      });
      show({ file: null });
    },
    async compareWithFile(file) {
      await run(msg('Reading the earlier session'), async (signal) => {
        const files = await lateFiles.load();
        if (isTrouble(files)) return files;
        const opened = await files.readSessionFile(file, signal);
        if (isTrouble(opened)) return opened;
        const refused = desk.refuses(opened.document);
        if (!refused) show({ earlier: opened.document });
        return refused;
      });
    },
  };
}
