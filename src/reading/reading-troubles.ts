import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { RolloffFinding } from './rolloff-finding';

/** Reading was told to stop. */
export const readingStopped = () =>
  trouble('stopped', msg('Reading was stopped. The capture is kept; read it again any time.'));

/** Reading ended on an error of its own. */
export function readingFailed(why: string): Trouble {
  return trouble(
    'failed',
    msg(str`Reading failed: ${why}. The capture is kept; reload and read it again.`),
  );
}

/** Reading a roll-off together ended on an error of its own. */
export function togetherFailed(why: string): RolloffFinding {
  const note = msg(
    str`The roll-off could not be read together: ${why}. Reload the page to try again.`,
  );
  return { rolloff: null, curve: null, bassMarginDb: null, notes: [note] };
}
