import { gaussian, seededRandom } from '../../../dsp/signal/random';
import type { Line, LineOptions, LineSound, Rig } from '../../../src/rig/port';
import { trouble, type Trouble } from '../../../src/trouble';

/** A chain from output to microphone, made of the simplest parts. */
export interface Chain {
  readonly sampleRate?: number;
  /** From the line's output to the microphone, dB; −Infinity is a dead speaker. */
  readonly gainDb?: number;
  readonly delaySeconds?: number;
  /** Rms of white noise at the microphone, dB re full scale. */
  readonly noiseDb?: number;
  /** What else the microphone hears at a moment. */
  readonly extra?: (seconds: number) => number;
  /** Changes each sample before the converter, as processing would. */
  readonly process?: (sample: number) => number;
  /** How much faster the speaker's clock runs than the microphone's. */
  readonly skewPpm?: number;
  /** Frames that go missing at a moment, once or ever again. */
  readonly lost?: {
    readonly atSeconds: number;
    readonly frames: number;
    readonly everySeconds?: number;
  };
  /** The line ends by itself. */
  readonly endAtSeconds?: number;
  readonly refuse?: Trouble;
}

export interface FakeRig extends Rig {
  /** Gains that were set, in order, with the time. */
  readonly gains: readonly { readonly seconds: number; readonly gainDb: number }[];
  readonly isOpen: boolean;
  /** Largest output sample so far, and what was played last. */
  readonly played: LineSound | null;
  readonly seconds: number;
}

const blockFrames = 4096;

let table: Float64Array | null = null;

/** Normal numbers that come again after 2 s, and not with any period of a test signal. */
function noiseTable(): Float64Array {
  if (table) return table;
  const normal = gaussian(seededRandom(5));
  table = Float64Array.from({ length: 98_317 }, () => normal());
  return table;
}

/** A period that repeats, straight lines between its samples. */
function readAt(period: Float32Array, position: number): number {
  const low = Math.floor(position);
  const part = position - low;
  const start = period[low % period.length] ?? 0;
  return part === 0 ? start : start + part * ((period[(low + 1) % period.length] ?? 0) - start);
}

/** A rig whose line runs as fast as it is listened to; its clock counts blocks. */
export function fakeRig(chain: Chain): FakeRig {
  const sampleRate = chain.sampleRate ?? 48_000;
  const noise = noiseTable();
  const delay = Math.round((chain.delaySeconds ?? 0.2) * sampleRate);
  const pathGain = 10 ** ((chain.gainDb ?? 0) / 20);
  const noiseGain = 10 ** ((chain.noiseDb ?? -70) / 20);
  const process = chain.process ?? ((x: number) => x);
  const clockRatio = 1 + (chain.skewPpm ?? 0) / 1e6;
  const gains: { seconds: number; gainDb: number }[] = [];
  let frame = 0;
  let open = false;
  let sound: LineSound | null = null;
  let gain = 0;
  let target = 0;

  const openLine = (options: LineOptions): Line | Trouble => {
    if (chain.refuse) return chain.refuse;
    if (options.signal.aborted) return trouble('stopped', 'Stopped.');
    const onWay = new Float64Array(delay + 1);
    const ramp = 1 / (0.05 * sampleRate);
    let nextLoss = chain.lost?.atSeconds ?? Infinity;
    open = true;
    const makeBlock = (): Float32Array => {
      const block = new Float32Array(blockFrames);
      for (let n = 0; n < blockFrames; n++) {
        const at = frame + n;
        gain += Math.max(Math.min(target - gain, ramp), -ramp);
        const out = sound ? gain * readAt(sound.period, at * clockRatio) : 0;
        onWay[at % onWay.length] = out;
        const come = onWay[(at + 1) % onWay.length] ?? 0;
        const room = noiseGain * (noise[at % noise.length] ?? 0);
        const heard = pathGain * come + room + (chain.extra?.(at / sampleRate) ?? 0);
        block[n] = Math.min(Math.max(process(heard), -1), 1);
      }
      frame += blockFrames;
      return block;
    };
    /** What is lost was played and heard, but comes to nobody. */
    const lose = (lost: Chain['lost']): void => {
      if (!lost || frame / sampleRate < nextLoss) return;
      frame += lost.frames;
      nextLoss = lost.everySeconds === undefined ? Infinity : nextLoss + lost.everySeconds;
    };
    const emit = (): void => {
      if (!open) return;
      if (chain.endAtSeconds !== undefined && frame / sampleRate >= chain.endAtSeconds) {
        open = false;
        options.onEnd(trouble('device-gone', 'The microphone was unplugged.'));
        return;
      }
      lose(chain.lost);
      const samples = makeBlock();
      options.onBlock({ frame: frame - blockFrames, samples, loopback: null });
      setImmediate(emit);
    };
    setImmediate(emit);
    options.signal.addEventListener('abort', () => {
      if (!open) return;
      open = false;
      options.onEnd(trouble('stopped', 'Stopped.'));
    });
    return {
      sampleRate,
      simulated: true,
      notes: [],
      unknown: [],
      play: (next) => {
        sound = next;
        if (next) note(next.gainDb);
      },
      setGain: note,
      close: () => {
        open = false;
      },
    };
  };
  const note = (gainDb: number): void => {
    gains.push({ seconds: frame / sampleRate, gainDb });
    target = 10 ** (gainDb / 20);
  };
  return {
    kind: 'practice',
    simulated: true,
    describe: () => Promise.resolve(trouble('failed', 'Not asked for here.')),
    play: () => Promise.resolve(trouble('failed', 'Not asked for here.')),
    monitor: () => () => undefined,
    open: (options) => Promise.resolve(openLine(options)),
    get gains() {
      return gains;
    },
    get isOpen() {
      return open;
    },
    get played() {
      return sound;
    },
    get seconds() {
      return frame / sampleRate;
    },
  };
}
