import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import { referenceChannel } from '../system/layout';
import { isTrouble, type Trouble } from '../trouble';
import { layOutTake } from './lay-out-take';
import { defaultPeakDb, requireWithin } from './schedule-take';
import type { Routing, TakePart, TakePlan, TakeSettings } from './take-plan';
import { changesFor, turnOfAll, turnsOf, type Slot } from './take-turns';

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
  /**
   * Whether every sub is reached through LFE, whichever output that is, and plays the bass of the
   * mains; subs that share it then sound alone in parts of their own, and all are on for the mains.
   * Default not.
   */
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
  const turns =
    routing === null
      ? [turnOfAll(layout)]
      : turnsOf(layout, routing, reference, options.throughLfe === true);
  if (isTrouble(turns)) return turns;
  const parts: TakePart[] = [];
  for (const { sounding, number, isHome, allOn } of turns) {
    const asked = sounding.filter(({ label }) => wanted.has(label));
    if (!asked.some(({ label }) => label !== reference || isHome)) continue;
    const heard = sounding.filter(({ label }) => wanted.has(label) || label === reference);
    const schedule = layOut(layout, settings, options, heard, reference, routing);
    const routes = routing
      ? Object.fromEntries(heard.map(({ label, output }) => [label, output]))
      : {};
    parts.push({ schedule, routes, ...changesFor(heard, number), ...(allOn ? { allOn } : {}) });
  }
  return { parts };
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
