import { checkedArrival } from '../../dsp/decay/checked-arrival';
import type { TakeResponse } from './response-of-take';

/** When a response arrives, seconds after zero delay: as read, else its largest sample. */
export function arrivalOf({ ir, arrival }: TakeResponse): number {
  return checkedArrival(ir, arrival?.seconds);
}
