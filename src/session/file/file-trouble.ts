import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../../trouble';

/** Why a file is not opened as a session; `finding` is the middle of a sentence. */
export function refuseFile(
  finding: string,
  advice = msg('Save it again where it was made.'),
): Trouble {
  return trouble(
    'bad-file',
    msg(str`This is not a session that can be opened: ${finding}. ${advice}`),
  );
}

/** The work on a file was ended before it was done. */
export const fileStopped = () =>
  trouble(
    'stopped',
    msg('Stopped: the file was not finished, and nothing in the sessions has changed.'),
  );
