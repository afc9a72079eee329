import { sectionsResponse, type Biquad } from '../filter/biquad';
import { weightingDb, weightingPoles, type Weighting } from './weighting';
import { dbToAmplitude } from './decibels';

const highestHz = 20_000;
const referenceHz = 1000;
/** Corner of what takes the constant part out of Z. */
const blockHz = 1;
/** Place of the pole that bends the top: |1 + ρ/z|² ∝ helpRoot − φ, φ = sin²(ω/2). */
const helpRoot = 1.165;
/** Where the top is met exactly, as parts of φ at 20 kHz. */
const nodes = [0.03, 0.5, 0.96] as const;

/**
 * Digital sections of a weighting, 0 dB at 1 kHz. From 10 Hz to 20 kHz they stay within 0.05 dB of
 * weightingDb at 44.1 kHz, 0.02 dB at 48 kHz, 0.001 dB from 88.2 kHz up. Z is flat but for the
 * constant part (−0.04 dB at 10 Hz). Throws RangeError unless 44100 ≤ sampleRate ≤ 384000.
 *
 * Poles by the matched z-transform. The numerator of the top is the square root of the quadratic
 * in φ = sin²(ω/2) that meets the power wanted at three frequencies; all roots lie beyond φ = 1, so
 * each gives a real zero inside the unit circle. Own design; goal: IEC 61672-1:2013, annex E.
 */
export function weightingSections(kind: Weighting, sampleRate: number): readonly Biquad[] {
  if (!(sampleRate >= 44_100 && sampleRate <= 384_000)) {
    throw new RangeError(`sampleRate must lie between 44100 and 384000, got ${sampleRate}`);
  }
  const pole = (hz: number): number => Math.exp((-2 * Math.PI * hz) / sampleRate);
  if (kind === 'Z') {
    const p = pole(blockHz);
    return [{ b0: (1 + p) / 2, b1: -(1 + p) / 2, b2: 0, a1: -p, a2: 0 }];
  }
  const [f1, f2, f3, f4] = weightingPoles;
  const lows = kind === 'A' ? [cutLows(pole(f1), pole(f1)), cutLows(pole(f2), pole(f3))] : [];
  if (kind === 'C') lows.push(cutLows(pole(f1), pole(f1)));
  const help = zeroFor(helpRoot);
  const rest = [
    ...lows,
    { b0: 1, b1: 0, b2: 0, a1: -2 * pole(f4), a2: pole(f4) ** 2 },
    { b0: 1, b1: 0, b2: 0, a1: help, a2: 0 },
  ];
  const sections = [...rest, shapeTop(kind, rest, sampleRate)];
  const gain = 1 / magnitude(sections, referenceHz, sampleRate);
  return [...sections, { b0: gain, b1: 0, b2: 0, a1: 0, a2: 0 }];
}

/** Two zeros at 0 Hz over the poles p and q. */
function cutLows(p: number, q: number): Biquad {
  return { b0: 1, b1: -2, b2: 1, a1: -(p + q), a2: p * q };
}

/** The two zeros that bring `rest` to the weighting at the nodes. */
function shapeTop(kind: Weighting, rest: readonly Biquad[], sampleRate: number): Biquad {
  const top = Math.sin((Math.PI * highestHz) / sampleRate) ** 2;
  const wanted = nodes.map((part) => {
    const hz = (Math.asin(Math.sqrt(part * top)) * sampleRate) / Math.PI;
    return (dbToAmplitude(weightingDb(kind, hz)) / magnitude(rest, hz, sampleRate)) ** 2;
  });
  const [x0, x1, x2] = nodes;
  const [y0 = 0, y1 = 0, y2 = 0] = wanted;
  const slope = (y1 - y0) / (x1 - x0);
  const bend = ((y2 - y1) / (x2 - x1) - slope) / (x2 - x0);
  const b = slope - bend * (x0 + x1);
  const c = y0 - slope * x0 + bend * x0 * x1;
  const root = Math.sqrt(b * b - 4 * bend * c);
  const p = zeroFor((top * (-b - root)) / (2 * bend));
  const q = zeroFor((top * (-b + root)) / (2 * bend));
  return { b0: 1, b1: p + q, b2: p * q, a1: 0, a2: 0 };
}

/** ρ below 1 for which |1 + ρ/z|² is proportional to root − φ. */
function zeroFor(root: number): number {
  if (!(root > 1)) throw new RangeError(`no real zero stands for ${root}`);
  const middle = 2 * root - 1;
  return middle - Math.sqrt(middle * middle - 1);
}

function magnitude(sections: readonly Biquad[], hz: number, sampleRate: number): number {
  const { re, im } = sectionsResponse(sections, hz, sampleRate);
  return Math.hypot(re, im);
}
