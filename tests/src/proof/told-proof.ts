import { bassGrid, type Transfer } from '../../../dsp/bass/transfer';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { judgeProof } from '../../../src/proof/judge-proof';
import type { Proof, ProofLine } from '../../../src/proof/proof';
import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';
import { factorySettings, type ProcessorSettings } from '../../../src/system/processor-settings';
import { echoes, moved, sumOf } from '../../dsp/comparison/echoes';
import { layoutOf } from '../../components/fake-bench';

export const hz = bassGrid();
export const layout = layoutOf('3.1');
/** 20 °C. */
const speed = 343.2;

/** Each speaker's distance and level before anything was typed, m and dB. */
const system = {
  FL: { metres: 2.4, levelDb: -20 },
  FR: { metres: 2.6, levelDb: -22 },
  FC: { metres: 2.2, levelDb: -18.5 },
  'Sub 1': { metres: 4, levelDb: -17 },
} as const;
type Label = keyof typeof system;
const labels = Object.keys(system) as Label[];

/** A response level at all frequencies, in third octaves. */
export const flat = {
  response: {
    hz: Array.from({ length: 40 }, (_, k) => 12 * 2 ** (k / 3.6)),
    db: new Array<number>(40).fill(0),
    noiseDb: new Array<number>(40).fill(-70),
  },
  fit: null,
  envelope: { startSeconds: 0, stepSeconds: 1e-4, level: [] },
};

export const typed: ProcessorSettings = {
  ...factorySettings,
  distanceMetres: { FL: 2.4, FR: 2.6, FC: 2.2, 'Sub 1': 4 },
  trimDb: { FL: 0, FR: 2, FC: -1.5, 'Sub 1': -3 },
  crossoverHz: { fronts: 80, centre: 80 },
};

/** What a processor really did, in a system that is all formulas. */
export interface Done {
  readonly distanceMetres?: Readonly<Partial<Record<Label, number>>>;
  readonly trimDb?: Readonly<Partial<Record<Label, number>>>;
  readonly crossoverHz?: Readonly<Partial<Record<Label, number | null>>>;
  readonly inverted?: readonly Label[];
  readonly lfeDb?: number;
  /** A Butterworth low-pass of second order at the sub. */
  readonly subLowPassHz?: number;
  /** Half width of every arrival's interval, seconds. */
  readonly half?: number;
  /** Changes of single readings after all. */
  readonly readings?: Readonly<Partial<Record<Label, Partial<ChannelReading>>>>;
  /** Another speaker's sound beside each, by factor. */
  readonly along?: { readonly channel: Label; readonly factor: number };
}

/** s²/(s² + √2 s + 1) for a high-pass, 1/(s² + √2 s + 1) for a low-pass, s = if/cutoff. */
function through(transfer: Transfer, cutoff: number | null, kind: 'high' | 'low'): Transfer {
  if (cutoff === null) return kind === 'high' ? transfer : moved(transfer, hz, 0);
  const re = new Float64Array(hz.length);
  const im = new Float64Array(hz.length);
  for (const [k, f] of hz.entries()) {
    const w = f / cutoff;
    const [a, b] = [1 - w * w, Math.SQRT2 * w];
    const size = a * a + b * b;
    const top = kind === 'high' ? -w * w : 1;
    const [x, y] = [(top * a) / size, (-top * b) / size];
    re[k] = x * (transfer.re[k] ?? 0) - y * (transfer.im[k] ?? 0);
    im[k] = x * (transfer.im[k] ?? 0) + y * (transfer.re[k] ?? 0);
  }
  return { re, im };
}

const twice = (transfer: Transfer, cutoff: number | null): Transfer =>
  through(through(transfer, cutoff, 'low'), cutoff, 'low');

/** A speaker's bass, its time counted from the reference's arrival. */
function bassOf(label: Label): Transfer {
  const { metres, levelDb } = system[label];
  const source = echoes(11 + labels.indexOf(label), hz, 10 ** (levelDb / 20));
  return moved(source, hz, 1, (metres - system.FL.metres) / speed);
}

/** The system before anything was typed. */
export const before: Readings = readingsOf((label) => ({
  arrivalSeconds: (system[label].metres - system.FL.metres) / speed,
  half: 5e-6,
  levelDb: system[label].levelDb,
  bass: bassOf(label),
}));

/** The same through a processor. */
export function after(done: Done): Readings {
  const { half = 5e-6, lfeDb = 0, inverted = [], along } = done;
  const distance = (label: Label): number =>
    done.distanceMetres?.[label] ?? typed.distanceMetres[label] ?? 0;
  const trim = (label: Label): number => done.trimDb?.[label] ?? typed.trimDb[label] ?? 0;
  const out = (label: Label): Transfer => {
    const gain = 10 ** (trim(label) / 20) * (inverted.includes(label) ? -1 : 1);
    const played = moved(bassOf(label), hz, gain, (distance('FL') - distance(label)) / speed);
    const own = done.subLowPassHz ?? null;
    return label === 'Sub 1' && own !== null ? through(played, own, 'low') : played;
  };
  return readingsOf((label) => {
    const arrival =
      (system[label].metres - system.FL.metres - distance(label) + distance('FL')) / speed;
    const told = done.readings?.[label] ?? {};
    if (label === 'Sub 1') {
      const bass = moved(twice(out(label), 120), hz, 10 ** (lfeDb / 20));
      return { arrivalSeconds: arrival, half, levelDb: null, bass, told };
    }
    const wanted = done.crossoverHz?.[label];
    const crossover = wanted === undefined ? 80 : wanted;
    const own = sumOf(through(out(label), crossover, 'high'), twice(out('Sub 1'), crossover));
    const bass =
      along && along.channel !== label
        ? sumOf(own, moved(out(along.channel), hz, along.factor))
        : own;
    return {
      arrivalSeconds: arrival,
      half,
      levelDb: system[label].levelDb + trim(label),
      bass,
      polarity: inverted.includes(label) ? 'inverted' : 'normal',
      told,
    };
  });
}

/** Judges what a processor did against what was to be typed. */
export function prove(done: Done, wanted: ProcessorSettings = typed): Proof {
  const steps = defaultProcessorSteps;
  return judgeProof({ layout, typed: wanted, steps, before, after: after(done) });
}

/** The line of an id; fails when there is none. */
export function lineOf({ lines }: Proof, id: string): ProofLine {
  const line = lines.find((one) => one.id === id);
  if (!line) throw new RangeError(`there is no line ${id}`);
  return line;
}

/** Ids of lines that did not pass. */
export function broken({ lines }: Proof): string[] {
  return lines.filter(({ verdict }) => verdict !== 'pass').map(({ id }) => id);
}

interface Told {
  readonly arrivalSeconds: number;
  readonly half: number;
  readonly levelDb: number | null;
  readonly bass: Transfer;
  readonly polarity?: 'normal' | 'inverted';
  readonly told?: Partial<ChannelReading>;
}

function readingsOf(tell: (label: Label) => Told): Readings {
  return {
    format: 'leadline-readings',
    version: 1,
    layout: layout.name,
    takeId: 'invented',
    reference: 'FL',
    referenceDistanceMetres: 2.4,
    absolute: false,
    temperatureCelsius: 20,
    simulated: true,
    clock: { skewPpm: 0, skewInterval: [0, 0], faults: [] },
    capture: { clipped: [], noiseFloorDb: -90, peakDb: -10 },
    channels: labels.map((label) => readingOf(label, tell(label))),
    notes: [],
    joined: [],
  };
}

function readingOf(channel: ChannelLabel, one: Told): ChannelReading {
  const { arrivalSeconds, half, levelDb, bass, polarity = 'normal', told } = one;
  const own = channel === 'FL' ? 0 : half;
  const distanceMetres = 2.4 + speed * arrivalSeconds;
  return {
    channel,
    arrivalSeconds,
    arrivalInterval: [arrivalSeconds - own, arrivalSeconds + own],
    distanceMetres,
    distanceInterval: [distanceMetres - speed * own, distanceMetres + speed * own],
    ceilingPathMetres: null,
    levelDb,
    polarity,
    rolloff: null,
    bassMarginDb: 50,
    peakToNoiseDb: 50,
    decaySeconds: null,
    bass: { re: Array.from(bass.re), im: Array.from(bass.im) },
    faults: [],
    notes: [],
    curves: flat,
    ...told,
  };
}
