import { msg } from '@lit/localize';
import type { PlayProgress, Rig } from '../../rig/port';
import type { TakePart } from '../../take/take-plan';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import { layOutStop } from '../../wirecheck/lay-out-stop';
import type { WalkPosition } from '../bench';
import { withStop } from '../walk-record';
import { withRig, type BenchRoom } from './bench-room';
import { routingOf } from './routing-of';
import { arrange, planOf } from './run-takes';
import { stimulusGainDb } from './stimulus-gain';

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
  const run = async (rig: Rig): Promise<Trouble | null> => {
    const part = await partOf(room, rig, round);
    if (isTrouble(part)) return part;
    const stopped = await arrange(room, part, signal);
    return stopped ?? playStop(room, rig, part, at, signal);
  };
  return withRig(room, run, at === 'seat' ? null : at);
}

/** The speakers that sound with the plugs as they are in this round, and how they are routed. */
async function partOf({ desk }: BenchRoom, rig: Rig, round: number): Promise<TakePart | Trouble> {
  const routing = await routingOf(desk, rig);
  if (isTrouble(routing)) return routing;
  const plan = planOf(desk, routing, null);
  if (isTrouble(plan)) return plan;
  return plan.parts[Math.min(round, plan.parts.length - 1)] ?? nothingToPlay();
}

async function playStop(
  { desk }: BenchRoom,
  rig: Rig,
  { schedule, routes }: TakePart,
  at: WalkPosition,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { layout, document } = desk.state;
  const { sampleRate, segments } = schedule;
  const channels = segments.map(({ channel }) => channel);
  const stop = layOutStop(layout, { sampleRate, channels });
  const show = (play: PlayProgress): void => {
    const now = stop.segments.findLast(({ sweepStart }) => sweepStart <= play.position);
    const sounds = now !== undefined && play.position < now.sweepStart + now.sweep.lengthSamples;
    const channel = sounds ? now.channel : null;
    desk.set({ activity: { kind: 'walking', at, play, channel } });
  };
  const secondsLeft = stop.lengthSamples / sampleRate;
  show({ phase: 'starting', progress: 0, secondsLeft, position: 0 });
  const gainDb = stimulusGainDb(rig, document);
  const capture = await rig.play(stop, { signal, routes, gainDb, onProgress: show });
  if (isTrouble(capture)) return capture;
  const read = await desk.parts.readStop(stop, capture);
  if (isTrouble(read)) return read;
  if (signal.aborted) return ended();
  desk.change((now) => withStop(now, at, read.sounds));
  return null;
}

const nothingToPlay = () =>
  trouble('no-output', msg('No speaker of this layout has an output to sound from.'));
const ended = () => trouble('stopped', msg('The stop was ended: nothing of it is kept.'));
