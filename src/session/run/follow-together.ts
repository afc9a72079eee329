import type { RolloffTogether, TogetherOrder } from '../../reading/rolloff-together';
import type { Desk } from '../desk';
import type { SessionDocument } from '../document';
import { ordersTogether } from '../orders-together';
import { rememberTogether, unreadTogether } from '../still-together';

/**
 * Reads roll-offs together, from now on, as soon as the session holds what they are read from;
 * what is known already is not read again. Their findings come into the state all at once.
 */
export function followTogether(desk: Desk): void {
  let seen: SessionDocument | null = null;
  let reading = false;
  const look = async (): Promise<void> => {
    if (reading || desk.state.document === seen) return;
    reading = true;
    try {
      for (;;) {
        seen = desk.state.document;
        const orders = missing(desk);
        if (orders.length === 0) return;
        const found: RolloffTogether[] = [];
        for (const order of orders) {
          const one = { order, finding: await desk.parts.readTogether(order) };
          rememberTogether(one);
          found.push(one);
        }
        desk.derive({ together: [...desk.state.together, ...found] });
      }
    } finally {
      reading = false;
    }
  };
  desk.subscribe(() => void look());
  void look();
}

function missing({ state }: Desk): TogetherOrder[] {
  return unreadTogether(ordersTogether(state.document, state.layout), state.together);
}
