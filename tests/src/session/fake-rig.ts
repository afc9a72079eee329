import type {
  Capture,
  Line,
  LineOptions,
  LineSound,
  OutputRoutes,
  PlayOptions,
  Rig,
} from '../../../src/rig/port';
import type { ChannelLabel } from '../../../src/system/channel';
import type { Schedule } from '../../../src/take/schedule';
import { trouble, type Trouble } from '../../../src/trouble';

/** What a fake rig was asked to play. */
export interface Played {
  readonly schedule: Schedule;
  /** Speakers whose sweeps sounded, in order, each once. */
  readonly swept: readonly ChannelLabel[];
  readonly routes: OutputRoutes;
  readonly gainDb: number;
}

export interface FakeRigOptions {
  readonly outputs?: number;
  /** Hz, of outputs and microphone. */
  readonly sampleRate?: number;
  /** Ends the take of that number, from 0, in its own way; null lets it end well. */
  readonly end?: (take: number, played: Played, options: PlayOptions) => Trouble | null;
  /** Amplitude at the microphone of a sound of amplitude 1. */
  readonly hears?: number;
  readonly loopback?: boolean;
  /** Amplitude of a 1 kHz tone that the microphone hears, such as a calibrator's. */
  readonly tone?: number;
}

/** The live rig of a room that is all in the head: plays in no time, and notes what it was asked. */
export function fakeRig(options: FakeRigOptions = {}) {
  const { outputs = 8, sampleRate = 48000, end = () => null, loopback = false } = options;
  const played: Played[] = [];
  const lines: FakeLine[] = [];
  const rig: Rig = {
    kind: 'live',
    simulated: false,
    describe: () =>
      Promise.resolve({
        kind: 'live',
        name: 'Invented interface',
        simulated: false,
        outputs,
        inputs: 2,
        sampleRate,
        unknown: [],
      }),
    async play(schedule, playOptions) {
      const swept = [...new Set(schedule.segments.map(({ channel }) => channel))];
      const { routes = {}, gainDb = 0, signal } = playOptions;
      const one = { schedule, swept, routes, gainDb };
      played.push(one);
      await new Promise((resolve) => setTimeout(resolve, 0));
      if (signal.aborted) return trouble('stopped', 'The take was stopped.');
      return end(played.length - 1, one, playOptions) ?? captureOf(played.length, loopback);
    },
    open(lineOptions) {
      const line = fakeLine(lineOptions, options.hears ?? 0.1, options.tone ?? 0);
      lines.push(line);
      return Promise.resolve(line);
    },
    monitor: () => () => undefined,
  };
  return { rig, played, lines };
}

/** A capture whose content is told by its length alone. */
export function captureOf(samples: number, loopback = false): Capture {
  return {
    samples: new Float32Array(samples).fill(0.1),
    loopback: loopback ? new Float32Array(samples).fill(0.2) : null,
    sampleRate: 48000,
    startedAt: '2030-01-02T03:04:05.000Z',
    rig: 'live',
    simulated: false,
    gaps: [],
    notes: ['microphone: Invented microphone'],
  };
}

export interface FakeLine extends Line {
  readonly sounds: (LineSound | null)[];
  readonly closed: boolean;
  readonly options: LineOptions;
}

/** A line whose microphone hears what plays, softer, and a faint noise; it runs as fast as it can. */
function fakeLine(options: LineOptions, hears: number, tone: number): FakeLine {
  const blockFrames = 4096;
  const sounds: (LineSound | null)[] = [];
  let sound: LineSound | null = null;
  let gainDb = 0;
  let frame = 0;
  let closed = false;
  let seed = 1;
  const hiss = (): number => {
    seed = (seed * 16807) % 2147483647;
    return (seed / 2147483647 - 0.5) * 2e-4;
  };
  const pump = (): void => {
    if (closed || options.signal.aborted) return;
    const samples = new Float32Array(blockFrames);
    const gain = hears * 10 ** (gainDb / 20);
    const period = sound?.period;
    for (let i = 0; i < blockFrames; i++) {
      const heard = period ? (period[(frame + i) % period.length] ?? 0) * gain : 0;
      const calibrator = tone * Math.sin((2 * Math.PI * 1000 * (frame + i)) / 48000);
      samples[i] = heard + calibrator + hiss();
    }
    options.onBlock({ frame, samples, loopback: null });
    frame += blockFrames;
    setTimeout(pump, 0);
  };
  setTimeout(pump, 0);
  return {
    sampleRate: 48000,
    simulated: false,
    notes: [],
    unknown: [],
    sounds,
    options,
    get closed() {
      return closed;
    },
    play(next) {
      sound = next;
      if (next) gainDb = next.gainDb;
      sounds.push(next);
    },
    setGain(next) {
      gainDb = next;
    },
    close() {
      closed = true;
    },
  };
}
