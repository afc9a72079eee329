import { practiceRoomName } from './practice-room-name';
import { msg, str } from '@lit/localize';
import type { ChannelLabel, Layout } from '../system/channel';
import type { Schedule } from '../take/schedule';
import { trouble } from '../trouble';
import type { Capture, MicLevel, PlayProgress, Rig } from './port';
import { practiceRate } from './practice-clock';
import { practiceInWorker } from './practice-in-worker';
import type { PracticeProcessor } from './practice-processor';
import { openLine, practiceNotes } from './practice-open';
import { heldMetres } from './practice-hold';
import type { PracticeFaults, PracticeRoom } from './practice-system';
import type { PracticeRecord } from './practice-worker';

export interface PracticeOptions {
  readonly layout: Layout;
  /** Which invented room; the same seed is the same room and the same capture. */
  readonly seed: number;
  /** What is broken on purpose, or what is in a given take; lines get the former only. */
  readonly faults?: PracticeFaults | ((schedule: Schedule) => PracticeFaults);
  /** Which place of the microphone in the room, from 0, the main seat. */
  readonly seat?: number;
  /** The speaker the microphone is held to, instead of the seat. */
  readonly hold?: ChannelLabel | null;
  /** How far from it, metres; default as on a walk. */
  readonly holdMetres?: number;
  /** What takes go through on their way to the speakers; null or left out: nothing. */
  readonly processor?: PracticeProcessor | null;
  /** Whether the recorder's second input hears the reference speaker's output; default not. */
  readonly loopback?: boolean;
  /** How much faster than time lines run; default 1. */
  readonly lineSpeed?: number;
  /** ISO 8601 time for the record; default the clock's. */
  readonly now?: () => string;
}

/**
 * The rig that needs nothing: room, speakers, microphone, noise and a second clock are computed,
 * faster than the take would last. Its progress is that of the computation. Lines run in real time.
 * Throws RangeError for a seed that is not finite, a seat that is no index, a speed of 0 or less.
 */
export function practiceRig(options: PracticeOptions): Rig {
  const {
    layout,
    seed,
    seat = 0,
    hold = null,
    holdMetres = heldMetres,
    faults = {},
    loopback = false,
    processor = null,
    lineSpeed = 1,
  } = options;
  const { now = () => new Date().toISOString() } = options;
  if (!Number.isFinite(seed)) throw new RangeError(`seed must be finite, got ${seed}`);
  if (!(Number.isInteger(seat) && seat >= 0)) throw new RangeError(`no seat ${seat}`);
  if (!(lineSpeed > 0)) throw new RangeError(`lineSpeed must be positive, got ${lineSpeed}`);
  const roomWith = (broken: PracticeFaults): PracticeRoom => ({
    layout,
    seed,
    seat,
    hold,
    holdMetres,
    loopback,
    faults: broken,
    ...(processor && { processor }),
  });
  const listeners = new Set<(level: MicLevel) => void>();
  const tell = (level: MicLevel): void => listeners.forEach((listener) => listener(level));
  return {
    kind: 'practice',
    simulated: true,
    describe: () =>
      Promise.resolve({
        kind: 'practice',
        name: practiceRoomName(seed),
        simulated: true,
        outputs: layout.channels.length,
        inputs: loopback ? 2 : 1,
        sampleRate: practiceRate,
        unknown: [],
      }),
    async play(schedule, { signal, onProgress, gainDb = 0 }) {
      if (signal.aborted) return stopped();
      if (schedule.layout !== layout.name) {
        const rooms = msg(
          str`the practice room has ${layout.name} and the take is for ${schedule.layout}`,
        );
        return trouble('other-take', msg(str`This take does not fit: ${rooms}. Make a new take.`));
      }
      const report = progressOf(schedule.lengthSamples, schedule.sampleRate, onProgress);
      const startedAt = now();
      try {
        const broken = typeof faults === 'function' ? faults(schedule) : faults;
        const record = await practiceInWorker(
          { room: roomWith(broken), schedule, gainDb },
          {
            signal,
            onStep: report,
            onLevel: tell,
          },
        );
        if (!record || signal.aborted) return stopped();
        report(schedule.lengthSamples);
        return signal.aborted ? stopped() : captureOf(record, startedAt, seed);
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        return trouble(
          'failed',
          msg(str`The practice room failed (${why}). Reload and try again.`),
        );
      }
    },
    open(line) {
      return openLine(roomWith(typeof faults === 'function' ? {} : faults), lineSpeed, line, tell);
    },
    monitor(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

function stopped() {
  return trouble(
    'stopped',
    msg('The simulated take was stopped. Nothing of it is kept; start it again.'),
  );
}

function captureOf(record: PracticeRecord, startedAt: string, seed: number): Capture {
  return {
    ...record,
    sampleRate: practiceRate,
    startedAt,
    rig: 'practice',
    simulated: true,
    gaps: [],
    notes: practiceNotes(seed),
  };
}

/** Turns positions into progress; the time left is judged by the time it took so far. */
function progressOf(
  length: number,
  sampleRate: number,
  onProgress: ((progress: PlayProgress) => void) | undefined,
): (position: number) => void {
  const began = performance.now();
  /** Share of the take's length that a first guess gives the computation. */
  const guess = 0.08;
  return (position) => {
    const progress = position / length;
    const passed = (performance.now() - began) / 1000;
    const secondsLeft =
      progress > 0.1
        ? (passed * (1 - progress)) / progress
        : Math.max((guess * length) / sampleRate - passed, 0);
    const phase = progress === 0 ? 'starting' : progress < 1 ? 'playing' : 'finishing';
    onProgress?.({ phase, progress, secondsLeft, position });
  };
}
