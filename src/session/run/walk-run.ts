import type { PlayProgress } from '../../rig/port';
import { planTake } from '../../take/plan-take';
import type { TakePart } from '../../take/take-plan';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { layOutStop } from '../../wirecheck/lay-out-stop';
import type { WalkPosition } from '../bench';
import { withStop } from '../walk-record';
import { withRig, type BenchRoom } from './bench-room';
import { routingOf } from './routing-of';
import { arrange } from './run-takes';

/**
 * Plays one stop of the walk and keeps what was heard; a stop that went wrong leaves the one before.
 * `round` is which of the plugs' arrangements plays, where the outputs do not reach all speakers.
 */
export function runStop(
  room: BenchRoom,
  at: WalkPosition,
  round: number,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { desk } = room;
  const hold = at === 'seat' ? null : at;
  return withRig(
    room,
    async (rig) => {
      const part = await partOf(room, rig, round);
      if (isTrouble(part)) return part;
      const stopped = await arrange(room, part, signal);
      if (stopped) return stopped;
      const { layout, document } = desk.state;
      const { sampleRate, segments } = part.schedule;
      const channels = segments.map(({ channel }) => channel);
      const stop = layOutStop(layout, { sampleRate, channels });
      const show = (play: PlayProgress): void => {
        const now = stop.segments.findLast(({ sweepStart }) => sweepStart <= play.position);
        const sounds =
          now !== undefined && play.position < now.sweepStart + now.sweep.lengthSamples;
        const channel = sounds ? now.channel : null;
        desk.set({ activity: { kind: 'walking', at, play, channel } });
      };
      const secondsLeft = stop.lengthSamples / sampleRate;
      show({ phase: 'starting', progress: 0, secondsLeft, position: 0 });
      const { gainDb, capDb } = document.live;
      const capture = await rig.play(stop, {
        signal,
        routes: part.routes,
        gainDb: rig.kind === 'live' ? Math.min(gainDb, capDb) : 0,
        onProgress: show,
      });
      if (isTrouble(capture)) return capture;
      const read = await desk.parts.readStop(stop, capture);
      if (isTrouble(read)) return read;
      if (signal.aborted) return ended;
      desk.change((now) => withStop(now, at, read.sounds));
      return null;
    },
    hold,
  );
}

/** The speakers that sound with the plugs as they are in this round, and how they are routed. */
async function partOf(
  { desk }: BenchRoom,
  rig: Parameters<typeof routingOf>[1],
  round: number,
): Promise<TakePart | Trouble> {
  const routing = await routingOf(desk, rig);
  if (isTrouble(routing)) return routing;
  const { layout, document, abilities } = desk.state;
  const rate = rig.kind === 'live' ? (abilities?.sampleRate ?? 0) : 0;
  const options = rate >= 44_100 && rate <= 192_000 ? { sampleRate: rate } : {};
  const plan = planTake(layout, document.take, routing, options);
  if (isTrouble(plan)) return plan;
  return plan.parts[Math.min(round, plan.parts.length - 1)] ?? nothingToPlay;
}

const nothingToPlay = trouble(
  'no-output',
  'No speaker of this layout has an output to sound from.',
);
const ended = trouble('stopped', 'The stop was ended: nothing of it is kept.');
