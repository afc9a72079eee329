import { breathe } from '../../breathe';
import { overlapSeconds } from '../../reading/overlap-seconds';
import type { Rig } from '../../rig/port';
import type { ChannelLabel } from '../../system/channel';
import { firstProvingAttempt, planTake } from '../../take/plan-take';
import type { Routing, TakePart, TakePlan } from '../../take/take-plan';
import { isTrouble, type Trouble } from '../../trouble';
import { withRig, type BenchRoom } from './bench-room';
import type { Desk } from '../desk';
import type { Proving } from '../document';
import { worthRepeating } from './worth-repeating';
import { playPart } from './play-part';
import { routingOf } from './routing-of';
import { takesHere } from '../take-record';
import { writePrompt } from './write-prompt';

/**
 * Plays all parts that the current position needs, one after another: stored and read as soon as
 * played, prompts between them, damaged speakers repeated at once. `channels` null is all speakers;
 * `proving` is what the takes are to prove, null for takes that read the system.
 */
export async function runTakes(
  room: BenchRoom,
  channels: readonly ChannelLabel[] | null,
  signal: AbortSignal,
  proving: Proving | null = null,
): Promise<Trouble | null> {
  announce(room.desk);
  // Setting up is a task of its own: it follows the one that showed that the take begins.
  await breathe();
  const play = async (rig: Rig): Promise<Trouble | null> => {
    const routing = await routingOf(room.desk, rig);
    if (isTrouble(routing)) return routing;
    const plan = planOf(room.desk, routing, channels, proving !== null);
    if (isTrouble(plan)) return plan;
    doubtPlugs(room, routing);
    const count = { played: 0, planned: plan.parts.length };
    for (const part of plan.parts) {
      const problem =
        (await arrange(room, part, signal)) ??
        (await playAndMend(room, rig, routing, part, channels ?? [], count, signal, proving));
      if (problem) return problem;
    }
    return null;
  };
  return withRig(room, play, null, proving?.settings ?? null);
}

/** Shows that a take is on its way while the rig is still asked what it can do. */
function announce(desk: Desk): void {
  const { document, layout } = desk.state;
  const plan = planTake(layout, document.take, null);
  const schedules = isTrouble(plan) ? [] : plan.parts.map(({ schedule }) => schedule);
  const secondsLeft = schedules.reduce((sum, one) => sum + one.lengthSamples / one.sampleRate, 0);
  const play = { phase: 'starting', progress: 0, secondsLeft, position: 0 } as const;
  desk.set({ activity: { kind: 'playing', play, channel: null, part: { number: 1, of: 1 } } });
}

/**
 * The takes this position needs of these speakers, of all when null. Those that prove go through
 * the processor, where a sub is reached by LFE; its bass rings on, so their sweeps stand apart.
 */
export function planOf(
  desk: Desk,
  routing: Routing | null,
  channels: readonly ChannelLabel[] | null,
  proves = false,
): TakePlan | Trouble {
  const { document, layout, readings } = desk.state;
  return planTake(layout, document.take, routing, {
    ...(channels ? { channels } : {}),
    attempt: proves
      ? firstProvingAttempt + takesHere(document, 'prove').length
      : takesHere(document).length,
    decaySeconds: readings && !proves ? overlapSeconds(readings) : null,
    throughLfe: proves,
    ...(routing ? rateOf(desk) : {}),
  });
}

/** A live take is written for the rate its output runs at; a rate no take can have is left to the rig to refuse. */
function rateOf({ state: { abilities } }: Desk): { readonly sampleRate?: number } {
  const sampleRate = abilities?.sampleRate ?? 0;
  return sampleRate >= 44_100 && sampleRate <= 192_000 ? { sampleRate } : {};
}

/** After a reload nobody knows where the plugs were left, if any were ever moved. */
function doubtPlugs({ desk, board }: BenchRoom, routing: Routing | null): void {
  const { document, layout } = desk.state;
  if (routing === null || !document.takes.some(({ rig }) => rig === 'live')) return;
  const whole = planTake(layout, document.take, routing);
  if (!isTrouble(whole)) board.doubt(whole);
}

/** Waits until plugs and switches are as the part needs them. */
export async function arrange(
  { gate, board }: BenchRoom,
  part: TakePart,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const work = board.workFor(part);
  if (work === null) return null;
  const stopped = await gate.ask(writePrompt(work), signal);
  if (stopped) board.interrupted(work);
  else board.done(work);
  return stopped;
}

/** Plays one part, then its damaged speakers alone, at most as often as the session says. */
async function playAndMend(
  { desk }: BenchRoom,
  rig: Rig,
  routing: Routing | null,
  part: TakePart,
  asked: readonly ChannelLabel[],
  count: { played: number; planned: number },
  signal: AbortSignal,
  proving: Proving | null,
): Promise<Trouble | null> {
  const play = (one: TakePart, repeating: readonly ChannelLabel[]): Promise<Trouble | null> => {
    count.played++;
    const place = { number: count.played, of: count.planned, repeating, proving };
    return playPart(desk, rig, one, place, signal);
  };
  const own = part.schedule.segments.map(({ channel }) => channel);
  let problem = await play(
    part,
    asked.filter((channel) => own.includes(channel)),
  );
  for (let round = 0; problem === null && round < desk.state.document.take.repeats; round++) {
    const { state } = desk;
    const heard = proving ? (state.proving ?? { toRepeat: [], readings: null }) : state;
    const damaged = worthRepeating(heard).filter((channel) => own.includes(channel));
    if (damaged.length === 0) break;
    const here = routing && { ...routing, routes: part.routes };
    const again = planOf(desk, here, damaged, proving !== null);
    if (isTrouble(again)) return again;
    count.planned += again.parts.length;
    for (const one of again.parts) problem ??= await play(one, damaged);
  }
  return problem;
}
