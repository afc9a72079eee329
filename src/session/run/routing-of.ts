import type { Rig } from '../../rig/port';
import type { Routing } from '../../take/take-plan';
import { isTrouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';

/**
 * What the outputs of a live rig reach; null for rigs in which every speaker has an output. Shows
 * the rig's abilities on the way.
 */
export async function routingOf(desk: Desk, rig: Rig): Promise<Routing | Trouble | null> {
  const abilities = await rig.describe();
  if (isTrouble(abilities)) return abilities;
  desk.set({ abilities });
  if (rig.kind !== 'live') return null;
  const { routes, lfeOutput } = desk.state.document.live;
  return { outputs: abilities.outputs, routes, lfeOutput };
}
