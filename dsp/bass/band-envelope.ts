import { checkGrid, type Transfer } from './transfer';

/** Envelope of one band of a response over time. */
export interface BandEnvelope {
  /** Delay of the first value. */
  readonly startSeconds: number;
  readonly stepSeconds: number;
  readonly values: Float64Array;
}

export interface EnvelopeTerms {
  readonly hz: Float64Array;
  readonly lowHz: number;
  readonly highHz: number;
  /** Delays looked at, default −0.03 to 0.25 s. */
  readonly fromSeconds?: number;
  readonly toSeconds?: number;
}

/** Width of each skirt, octaves. */
const skirt = 0.35;
/** Values in the shortest period of the band. */
const perPeriod = 16;

/**
 * |2 ∫ W(f) H(f) e^(2πift) df| by the trapezoidal rule on the grid, W 1 from lowHz to highHz with
 * skirts of raised cosines over log f, 0.35 octave wide, as far as the grid goes. On a grid of
 * spacing Δf what comes 1/Δf later stands there too, so the response must have died away by then.
 * Throws RangeError for a band or times upside down, or a band beside the grid.
 */
export function bandEnvelope({ re, im }: Transfer, terms: EnvelopeTerms): BandEnvelope {
  const { hz, lowHz, highHz, fromSeconds = -0.03, toSeconds = 0.25 } = terms;
  checkGrid(hz);
  if (!(lowHz > 0 && lowHz < highHz && fromSeconds < toSeconds)) {
    throw new RangeError(
      `band and times must rise, got ${lowHz}, ${highHz} Hz, ${fromSeconds}, ${toSeconds} s`,
    );
  }
  const used = [...hz.keys()].filter((k) => bandGain(hz[k] ?? 0, lowHz, highHz) > 0);
  if (used.length < 2) throw new RangeError(`the grid lies beside ${lowHz} to ${highHz} Hz`);
  const stepSeconds = 1 / (perPeriod * highHz);
  const count = Math.floor((toSeconds - fromSeconds) / stepSeconds) + 1;
  const sumRe = new Float64Array(count);
  const sumIm = new Float64Array(count);
  for (const k of used) {
    const f = hz[k] ?? 0;
    const width = (hz[k + 1] ?? f) - (hz[k - 1] ?? f);
    const gain = bandGain(f, lowHz, highHz) * width;
    const first = 2 * Math.PI * f * fromSeconds;
    const turn = 2 * Math.PI * f * stepSeconds;
    const [stepRe, stepIm] = [Math.cos(turn), Math.sin(turn)];
    const [a, b] = [gain * (re[k] ?? 0), gain * (im[k] ?? 0)];
    let x = a * Math.cos(first) - b * Math.sin(first);
    let y = a * Math.sin(first) + b * Math.cos(first);
    for (let n = 0; n < count; n++) {
      sumRe[n] = (sumRe[n] ?? 0) + x;
      sumIm[n] = (sumIm[n] ?? 0) + y;
      const next = x * stepRe - y * stepIm;
      y = x * stepIm + y * stepRe;
      x = next;
    }
  }
  const values = sumRe.map((x, n) => Math.hypot(x, sumIm[n] ?? 0));
  return { startSeconds: fromSeconds, stepSeconds, values };
}

/**
 * Delay at which an envelope first rises through `share` of its largest value, straight between
 * its values; null for silence.
 */
export function envelopeOnset(
  { startSeconds, stepSeconds, values }: BandEnvelope,
  share: number,
): number | null {
  const level = share * values.reduce((most, value) => Math.max(most, value), 0);
  if (!(level > 0)) return null;
  const at = values.findIndex((value) => value >= level);
  const [before, here] = [values[at - 1] ?? 0, values[at] ?? 0];
  const into = at === 0 ? 0 : (here - level) / (here - before);
  return startSeconds + (at - into) * stepSeconds;
}

function bandGain(hz: number, lowHz: number, highHz: number): number {
  if (hz >= lowHz && hz <= highHz) return 1;
  const outside = Math.max(Math.log2(lowHz / hz), Math.log2(hz / highHz)) / skirt;
  return outside >= 1 ? 0 : 0.5 * (1 + Math.cos(Math.PI * outside));
}
