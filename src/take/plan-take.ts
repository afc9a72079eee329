import { msg, str } from '@lit/localize';
import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import { referenceChannel } from '../system/layout';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { assignOutputs, type OutputAssignment } from './assign-outputs';
import { layOutTake } from './lay-out-take';
import { defaultPeakDb, requireWithin } from './schedule-take';
import type { PlugMove, Routing, TakePart, TakePlan, TakeSettings } from './take-plan';

export interface PlanOptions {
  /** Only these speakers, as in a repeat; the reference speaker is always swept as well. */
  readonly channels?: readonly ChannelLabel[];
  /** 0, 1, 2 …: another spacing of the marks, so that takes are not confused. */
  readonly attempt?: number;
  /** How long a sweep's response must be left alone; overlap only when it is known. */
  readonly decaySeconds?: number | null;
  /** Peak of marks and sweeps, dB re full scale; default −12. */
  readonly peakDb?: number;
  /** Hz; default 48000. */
  readonly sampleRate?: number;
  /** Whether every sub is reached through LFE, whichever output that is; default not. */
  readonly throughLfe?: boolean;
}

/** Takes that prove are counted from here, so that none is taken for one that reads the system. */
export const firstProvingAttempt = 1000;

/** How much louder a processor replays LFE than a main channel, dB (ITU-R BS.775, from memory). */
export const lfeGainDb = 10;

/**
 * All takes one microphone position needs. `routing` null: every speaker has an output of its own.
 * There are as many parts as speakers share the fullest output, the fewest there can be; a part
 * plays the speaker whose turn it is on every output.
 * Speakers that share an output sound in different parts: subs by their switches, others by moving
 * plugs. With a single output every speaker is its own reference, and only an electrical loopback
 * can relate their times. A Trouble when a speaker's output is not there, or when another shares
 * that of the reference. Throws RangeError for settings out of their range.
 */
export function planTake(
  layout: Layout,
  settings: TakeSettings,
  routing: Routing | null,
  options: PlanOptions = {},
): TakePlan | Trouble {
  requireSettings(settings);
  const { decaySeconds } = options;
  if (typeof decaySeconds === 'number') requireWithin('decaySeconds', decaySeconds, 0, 60);
  const reference = referenceChannel(layout);
  const wanted = new Set(options.channels ?? layout.channels.map(({ label }) => label));
  const slots = routing === null ? [ownOutputs(layout)] : turnsOf(layout, routing, reference);
  if (isTrouble(slots)) return slots;
  const parts: TakePart[] = [];
  for (const [turn, sounding] of slots.entries()) {
    const asked = sounding.filter(({ label }) => wanted.has(label));
    if (!asked.some(({ label }) => label !== reference || turn === 0)) continue;
    const heard = sounding.filter(({ label }) => wanted.has(label) || label === reference);
    const schedule = layOut(layout, settings, options, heard, reference, routing);
    const routes = routing
      ? Object.fromEntries(heard.map(({ label, output }) => [label, output]))
      : {};
    parts.push({ schedule, routes, ...changesFor(heard, turn) });
  }
  return { parts };
}

/** A speaker on an output, among those that share it. */
interface Slot {
  readonly output: number;
  readonly label: ChannelLabel;
  readonly sharing: readonly ChannelLabel[];
}

function ownOutputs({ channels }: Layout): Slot[] {
  return channels.map(({ label }, output) => ({ output, label, sharing: [label] }));
}

/** What sounds on the outputs, turn after turn; the reference always does where it has its own. */
function turnsOf(layout: Layout, routing: Routing, reference: ChannelLabel): Slot[][] | Trouble {
  if (routing.outputs < 1) return noOutputs();
  const assignment = assignOutputs(layout, routing);
  if (isTrouble(assignment)) return assignment;
  const shared = sharedWithReference(assignment, reference, routing.outputs);
  if (shared) return shared;
  const turns = Math.max(...[...assignment.values()].map((sharing) => sharing.length));
  return Array.from({ length: turns }, (_, turn) =>
    [...assignment].flatMap(([output, sharing]) => {
      const stays = sharing.length === 1 && sharing[0] === reference;
      const label = sharing[stays ? 0 : turn];
      return label === undefined ? [] : [{ output, label, sharing }];
    }),
  );
}

/** Plugs and switches for a turn; in the first, plugs stand as the layout's wiring has them. */
function changesFor(
  sounding: readonly Slot[],
  turn: number,
): Pick<TakePart, 'moves' | 'switchOff' | 'switchOn'> {
  const moves: PlugMove[] = [];
  const switchOff: ChannelLabel[] = [];
  const switchOn: ChannelLabel[] = [];
  for (const { output, label, sharing } of sounding) {
    if (sharing.length === 1) continue;
    const before = sharing[turn - 1] ?? null;
    // Subs on one output stay plugged in together; a main needs the plug, and so does what follows it.
    const stays = isSub(label) && (before === null || isSub(before));
    if (turn > 0 && !stays) moves.push({ output, from: before, to: label });
    if (!isSub(label)) continue;
    switchOff.push(...sharing.filter((other) => isSub(other) && other !== label));
    if (turn > 0) switchOn.push(label);
  }
  return { moves, switchOff, switchOn };
}

function layOut(
  layout: Layout,
  settings: TakeSettings,
  options: PlanOptions,
  heard: readonly Slot[],
  reference: ChannelLabel,
  routing: Routing | null,
) {
  const { sweepSeconds, averages, pauseSeconds, overlap } = settings;
  const slotOf = (label: ChannelLabel) => heard.find((slot) => slot.label === label);
  const there = layout.channels.filter(({ label }) => slotOf(label));
  const own = there.find(({ label }) => label === reference) ?? there[0];
  const first = (channel: Channel): number => (channel === own ? 0 : 1);
  return layOutTake({
    layoutName: layout.name,
    channels: [...there].sort((a, b) => first(a) - first(b)),
    reference: own?.label ?? reference,
    sampleRate: options.sampleRate ?? 48000,
    sweepSeconds,
    peakDb: options.peakDb ?? defaultPeakDb,
    averages,
    pauseSeconds,
    decaySeconds: overlap ? (options.decaySeconds ?? null) : null,
    attempt: options.attempt ?? 0,
    replayGainDb: (label) => {
      const onLfe =
        (options.throughLfe === true && isSub(label)) ||
        (routing !== null && slotOf(label)?.output === routing.lfeOutput);
      return onLfe ? lfeGainDb : 0;
    },
  });
}

function requireSettings({ sweepSeconds, averages, pauseSeconds }: TakeSettings): void {
  requireWithin('sweepSeconds', sweepSeconds, 0.5, 30);
  requireWithin('averages', averages, 1, 8);
  if (!Number.isInteger(averages)) throw new RangeError(`averages must be whole, got ${averages}`);
  requireWithin('pauseSeconds', pauseSeconds, 0, 10);
}

function noOutputs(): Trouble {
  return trouble(
    'no-output',
    msg(
      'This output device has no channel to play on. Choose another output, or use the recording instead.',
    ),
  );
}

/** With more than one output, nothing may take the plug of the speaker that plays the marks. */
function sharedWithReference(
  assignment: OutputAssignment,
  reference: ChannelLabel,
  outputs: number,
): Trouble | null {
  if (outputs === 1) return null;
  for (const [output, sharing] of assignment) {
    const other = sharing.find((label) => label !== reference);
    if (!sharing.includes(reference) || other === undefined) continue;
    return trouble(
      'no-output',
      msg(
        str`Output ${output + 1} is to feed ${reference} and ${other}, but ${reference} plays the timing marks of every take and needs an output of its own. Give ${other} another output.`,
      ),
    );
  }
  return null;
}
