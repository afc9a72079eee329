import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';

/** What was asked when nobody looks any more. */
export const stopped = () =>
  trouble('stopped', msg('The sheet was left before this was computed.'));

/** The sentence for a computation that went wrong on its own. */
export function failed(why: string): Trouble {
  return trouble(
    'failed',
    msg(str`This could not be computed: ${why}. Choose it again; if it stays so, repeat the take.`),
  );
}
