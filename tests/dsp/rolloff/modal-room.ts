import { realSignal } from '../../../dsp/fft/fft';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import type { HighPassResponse } from '../../../dsp/rolloff/box-response';

/** A shoebox as a sum of damped modes (Morse and Ingard), good below 500 Hz; own generator. */
export interface ModalRoom {
  readonly size: readonly [number, number, number];
  /** Reverberation time at 20 and at 500 Hz, seconds. */
  readonly decaySeconds: readonly [number, number];
  readonly modes: readonly Mode[];
}

interface Mode {
  readonly order: readonly [number, number, number];
  readonly hz: number;
  readonly decayRate: number;
  readonly norm: number;
}

export type Point = readonly [number, number, number];

const SOUND = 343;
const HIGHEST_MODE_HZ = 900;
const SAMPLE_RATE = 2000;
const SIZE = 4096;
const TOP_HZ = 600;

export function makeModalRoom(
  size: readonly [number, number, number],
  decaySeconds: readonly [number, number],
  random: () => number,
): ModalRoom {
  const modes: Mode[] = [];
  const reach = size.map((side) => Math.floor((2 * side * HIGHEST_MODE_HZ) / SOUND));
  const [nx = 0, ny = 0, nz = 0] = reach;
  for (let x = 0; x <= nx; x++) {
    for (let y = 0; y <= ny; y++) {
      for (let z = 0; z <= nz; z++) {
        const hz = (SOUND / 2) * Math.hypot(x / size[0], y / size[1], z / size[2]);
        if (hz > HIGHEST_MODE_HZ) continue;
        const share = Math.log(Math.min(Math.max(hz, 20), 500) / 20) / Math.log(25);
        const decay =
          decaySeconds[0] ** (1 - share) * decaySeconds[1] ** share * (0.75 + 0.5 * random());
        const norm = (x ? 2 : 1) * (y ? 2 : 1) * (z ? 2 : 1);
        modes.push({ order: [x, y, z], hz, decayRate: 6.91 / decay, norm });
      }
    }
  }
  return { size, decaySeconds, modes };
}

/** Free-field-normalised transfer 4π·G times the speaker's own response, as an impulse response. */
export function modalResponse(
  room: ModalRoom,
  source: Point,
  microphone: Point,
  speaker: HighPassResponse,
): ImpulseResponse {
  const spectrum = new Float64Array(SIZE + 2);
  const volume = room.size[0] * room.size[1] * room.size[2];
  const shapes = room.modes.map(
    (mode) =>
      mode.norm *
      mode.order.reduce(
        (product, n, axis) =>
          product *
          Math.cos((n * Math.PI * (source[axis] ?? 0)) / (room.size[axis] ?? 1)) *
          Math.cos((n * Math.PI * (microphone[axis] ?? 0)) / (room.size[axis] ?? 1)),
        1,
      ),
  );
  const waveNumbers = room.modes.map(({ hz }) => ((2 * Math.PI * hz) / SOUND) ** 2);
  const dampings = room.modes.map(({ decayRate }) => (2 * decayRate) / SOUND);
  for (let bin = 1; bin < SIZE / 2; bin++) {
    const hz = (bin * SAMPLE_RATE) / SIZE;
    if (hz > TOP_HZ) break;
    const k = (2 * Math.PI * hz) / SOUND;
    let re = 0;
    let im = 0;
    for (let m = 0; m < shapes.length; m++) {
      const a = (waveNumbers[m] ?? 0) - k * k;
      const b = k * (dampings[m] ?? 0);
      const scale = (shapes[m] ?? 0) / (a * a + b * b);
      re += a * scale;
      im -= b * scale;
    }
    const own = speaker(hz);
    setBin(
      spectrum,
      bin,
      re * own.re - im * own.im,
      re * own.im + im * own.re,
      ((4 * Math.PI) / volume) * fadeAt(hz),
    );
  }
  return { samples: realSignal(spectrum, SIZE), sampleRate: SAMPLE_RATE, zeroIndex: 300 };
}

/** Adds passband ripple (sum of slow cosines over log f, rms `rippleDb`) and a tilt. */
export function withRipple(
  response: HighPassResponse,
  rippleDb: number,
  tiltDbPerOctave: number,
  random: () => number,
): HighPassResponse {
  const parts = [0.4, 0.7, 1.1, 1.6].map((rate) => ({
    rate,
    phase: 2 * Math.PI * random(),
  }));
  const tilt = tiltDbPerOctave * (random() < 0.5 ? -1 : 1) * random();
  return (hz) => {
    const octave = Math.log2(Math.max(hz, 5) / 200);
    let db = tilt * octave;
    for (const { rate, phase } of parts) {
      db += (rippleDb / Math.sqrt(2)) * Math.cos(2 * Math.PI * rate * octave + phase);
    }
    const gain = 10 ** (db / 20);
    const { re, im } = response(hz);
    return { re: re * gain, im: im * gain };
  };
}

/** The speaker in the free field, band-limited to 600 Hz as the rooms are. */
export function freeResponse(speaker: HighPassResponse): ImpulseResponse {
  const spectrum = new Float64Array(SIZE + 2);
  for (let bin = 1; bin < SIZE / 2; bin++) {
    const hz = (bin * SAMPLE_RATE) / SIZE;
    if (hz > TOP_HZ) break;
    const own = speaker(hz);
    setBin(spectrum, bin, own.re, own.im, fadeAt(hz));
  }
  return { samples: realSignal(spectrum, SIZE), sampleRate: SAMPLE_RATE, zeroIndex: 300 };
}

/** Delays by 0.15 s, so that the onset stays inside the frame. */
function setBin(spectrum: Float64Array, bin: number, re: number, im: number, gain: number): void {
  const turn = -2 * Math.PI * ((bin * SAMPLE_RATE) / SIZE) * 0.15;
  spectrum[2 * bin] = gain * (re * Math.cos(turn) - im * Math.sin(turn));
  spectrum[2 * bin + 1] = gain * (re * Math.sin(turn) + im * Math.cos(turn));
}

function fadeAt(hz: number): number {
  return hz < 540 ? 1 : 0.5 * (1 + Math.cos((Math.PI * (hz - 540)) / (TOP_HZ - 540)));
}
