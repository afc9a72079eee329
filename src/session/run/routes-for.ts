import type { OutputRoutes, Rig } from '../../rig/port';
import type { ChannelLabel } from '../../system/channel';
import { planTake } from '../../take/plan-take';
import { isTrouble, type Trouble } from '../../trouble';
import { routingOf } from './routing-of';
import type { BenchRoom } from './bench-room';
import { arrange } from './run-takes';

/**
 * The outputs as they stand while one speaker sounds alone. A speaker that needs a plug moved is
 * asked for first; one that shares its output sounds with its neighbour, and nothing is asked.
 */
export async function routesFor(
  room: BenchRoom,
  rig: Rig,
  channel: ChannelLabel,
  signal: AbortSignal,
): Promise<OutputRoutes | Trouble> {
  const { document, layout } = room.desk.state;
  const routing = await routingOf(room.desk, rig);
  if (isTrouble(routing)) return routing;
  if (routing === null) return {};
  const plan = planTake(layout, document.take, routing);
  if (isTrouble(plan)) return plan;
  const part = plan.parts.find(({ schedule }) => schedule.channels.includes(channel));
  if (!part) return routing.routes;
  const stopped = await arrange(room, { ...part, switchOff: [], switchOn: [] }, signal);
  return stopped ?? part.routes;
}
