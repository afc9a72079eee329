import { msg, str } from '@lit/localize';
import type { Capture, PlayProgress, Rig } from '../../rig/port';
import type { ChannelLabel } from '../../system/channel';
import type { Schedule } from '../../take/schedule';
import { partialEnd, shortenSchedule } from '../../take/shorten-schedule';
import type { TakePart } from '../../take/take-plan';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { Proving } from '../document';
import { keepCapture } from './keep-capture';
import { stimulusGainDb } from './stimulus-gain';

/** Which part of how many is played, from 1, and what it repeats. */
export interface PartPlace {
  readonly number: number;
  readonly of: number;
  /** Speakers that came out damaged before; empty in a first take. */
  readonly repeating: readonly ChannelLabel[];
  /** What it is to prove; null for a take that reads the system. */
  readonly proving: Proving | null;
}

/**
 * Plays one part, stores what was captured and reads it. When the take ends early, the speakers
 * that were finished are kept and read as well, and the trouble says so.
 */
export async function playPart(
  desk: Desk,
  rig: Rig,
  part: TakePart,
  place: PartPlace,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const { schedule, routes } = part;
  const seconds = schedule.lengthSamples / schedule.sampleRate;
  show({ phase: 'starting', progress: 0, secondsLeft: seconds, position: 0 });
  let partial: { readonly capture: Capture; readonly heardSamples: number } | null = null;
  const capture = await rig.play(schedule, {
    signal,
    routes,
    gainDb: stimulusGainDb(rig, desk.state.document),
    onProgress: show,
    onPartial: (capture, heardSamples) => (partial = { capture, heardSamples }),
  });
  if (!isTrouble(capture)) return keepCapture(desk, schedule, capture, signal, place.proving);
  return partial === null ? capture : keepPartial(desk, schedule, partial, capture, place.proving);

  function show(play: PlayProgress): void {
    const segment = schedule.segments.findLast((one) => one.markStart <= play.position);
    const { number, of, repeating } = place;
    const channel = segment?.channel ?? null;
    desk.set({ activity: { kind: 'playing', play, channel, part: { number, of }, repeating } });
  }
}

/** Keeps the speakers that were finished; `why` says why the take ended, and stays the trouble. */
async function keepPartial(
  desk: Desk,
  schedule: Schedule,
  { capture, heardSamples }: { readonly capture: Capture; readonly heardSamples: number },
  why: Trouble,
  proving: Proving | null,
): Promise<Trouble> {
  const finished = shortenSchedule(schedule, heardSamples);
  if (finished === null) return why;
  const speakers = finished.channels.join(', ');
  const end = (partialEnd(schedule, finished) * capture.sampleRate) / schedule.sampleRate;
  const cut = cutCapture(capture, end);
  const unread = await keepCapture(desk, finished, cut, desk.goOn(), proving);
  const kept = unread
    ? msg(str`What was recorded of ${speakers} is kept, but was not read: ${unread.sentence}`)
    : msg(str`What was finished by then is kept and read: ${speakers}.`);
  return trouble(why.trouble, `${why.sentence} ${kept}`);
}

function cutCapture(capture: Capture, end: number): Capture {
  const cut = (samples: Float32Array): Float32Array => samples.slice(0, Math.ceil(end));
  const { samples, loopback, gaps } = capture;
  return {
    ...capture,
    samples: cut(samples),
    loopback: loopback && cut(loopback),
    gaps: gaps.filter(({ atSample }) => atSample < end),
  };
}
