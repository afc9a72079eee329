import type { Layout } from '../system/channel';
import { trouble } from '../trouble';
import type { Capture, MicLevel, PlayProgress, Rig } from './port';
import { practiceRate } from './practice-capture';
import { practiceInWorker } from './practice-in-worker';
import type { PracticeFaults } from './practice-system';

export interface PracticeOptions {
  readonly layout: Layout;
  /** Which invented room; the same seed is the same room and the same capture. */
  readonly seed: number;
  readonly faults?: PracticeFaults;
  /** ISO 8601 time for the record; default the clock's. */
  readonly now?: () => string;
}

/**
 * The rig that needs nothing: room, speakers, microphone, noise and a second clock are computed,
 * faster than the take would last. Its progress is that of the computation. Throws RangeError for
 * a seed that is not finite.
 */
export function practiceRig(options: PracticeOptions): Rig {
  const { layout, seed, faults = {}, now = () => new Date().toISOString() } = options;
  if (!Number.isFinite(seed)) throw new RangeError(`seed must be finite, got ${seed}`);
  const listeners = new Set<(level: MicLevel) => void>();
  return {
    kind: 'practice',
    simulated: true,
    describe: () =>
      Promise.resolve({
        kind: 'practice',
        name: `Practice room ${seed}, simulated`,
        simulated: true,
        outputs: layout.channels.length,
        inputs: 1,
        sampleRate: practiceRate,
        unknown: [],
      }),
    async play(schedule, { signal, onProgress, gainDb = 0 }) {
      if (signal.aborted) return stopped();
      if (schedule.layout !== layout.name) {
        const rooms = `the practice room has ${layout.name} and the take is for ${schedule.layout}`;
        return trouble('other-take', `This take does not fit: ${rooms}. Make a new take.`);
      }
      const report = progressOf(schedule.lengthSamples, schedule.sampleRate, onProgress);
      const startedAt = now();
      try {
        const samples = await practiceInWorker(
          { layout, seed, schedule, gainDb, faults },
          {
            signal,
            onStep: report,
            onLevel: (level) => listeners.forEach((listener) => listener(level)),
          },
        );
        if (!samples || signal.aborted) return stopped();
        report(schedule.lengthSamples);
        return signal.aborted ? stopped() : captureOf(samples, startedAt, seed);
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        return trouble('failed', `The practice room failed (${why}). Reload and try again.`);
      }
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
    'The simulated take was stopped. Nothing of it is kept; start it again.',
  );
}

function captureOf(samples: Float32Array, startedAt: string, seed: number): Capture {
  return {
    samples,
    sampleRate: practiceRate,
    startedAt,
    rig: 'practice',
    simulated: true,
    loopback: null,
    gaps: [],
    notes: [`Simulated: practice room ${seed}.`],
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
