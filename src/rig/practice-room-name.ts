import { msg, str } from '@lit/localize';

/** What the practice room of a seed is called, in the language in force. */
export function practiceRoomName(seed: number): string {
  return msg(str`Practice room ${seed}, simulated`);
}
