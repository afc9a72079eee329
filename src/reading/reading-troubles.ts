import { trouble, type Trouble } from '../trouble';

/** Reading was told to stop. */
export const readingStopped = trouble(
  'stopped',
  'Reading was stopped. The capture is kept; read it again any time.',
);

/** Reading ended on an error of its own. */
export function readingFailed(why: string): Trouble {
  return trouble(
    'failed',
    `Reading failed: ${why}. The capture is kept; reload and read it again.`,
  );
}
