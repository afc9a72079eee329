import type { NoiseSpectrum } from '../../../src/noise/noise-state';
import {
  frequencyRanges,
  frequencyScale,
  frequencyTicks,
  type FrequencyRange,
  type FrequencyTick,
} from '../../charts/frequency-axis';
import { isNumber } from '../../../src/locale/number-text';

/** Bands below this coherence, or less than this over the noise, are drawn faint. */
export const trustedCoherence = 0.9;
const trustedMarginDb = 6;

const spanDb = 70;
const stepDb = 10;

/** The spectrum in pixels: outlines of its bands, the floor under them, the lane of coherence. */
export interface SpectrumLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: { left: number; top: number; right: number; bottom: number };
  readonly lane: { top: number; bottom: number } | null;
  readonly topDb: number;
  readonly frequencies: readonly FrequencyTick[];
  readonly levels: readonly { readonly db: number; readonly y: number }[];
  readonly trusted: string;
  readonly doubtful: string;
  readonly floor: string;
  readonly floorLine: string;
  readonly coherence: string;
}

export interface SpectrumInput {
  readonly spectrum: NoiseSpectrum;
  readonly bandsPerOctave: number;
  readonly range: FrequencyRange;
  readonly width: number;
  /** Top of the level axis when last drawn; it stays as long as it fits. */
  readonly lastTopDb: number | null;
}

const narrow = 480;
const laneHeight = 34;

/** Lays a spectrum out for a width in pixels; a few paths whatever the number of bands. */
export function layOutSpectrum(input: SpectrumInput): SpectrumLayout {
  const { spectrum, bandsPerOctave, range, width, lastTopDb } = input;
  const height = width < narrow ? 300 : Math.round(Math.max(320, Math.min(420, width * 0.5)));
  const hasLane = spectrum.coherence.some(isNumber);
  const plot = {
    left: 40,
    top: 22,
    right: Math.max(120, width - 8),
    bottom: height - 24 - (hasLane ? laneHeight + 8 : 0),
  };
  const lane = hasLane ? { top: plot.bottom + 8, bottom: plot.bottom + 8 + laneHeight } : null;
  const topDb = chooseTop(spectrum, lastTopDb);
  const x = frequencyScale(range, plot.left, plot.right);
  const y = (db: number): number => {
    const share = (topDb - db) / spanDb;
    return plot.top + Math.min(1, Math.max(0, share)) * (plot.bottom - plot.top);
  };
  const half = 2 ** (1 / (2 * bandsPerOctave));
  const [lowEdge, highEdge] = frequencyRanges[range];
  const trusted: string[] = [];
  const doubtful: string[] = [];
  const floor: string[] = [];
  const floorLine: string[] = [];
  const coherence: string[] = [];
  spectrum.hz.forEach((hz, index) => {
    if (!(hz * half > lowEdge && hz / half < highEdge)) return;
    const left = Math.max(plot.left, x(hz / half)).toFixed(1);
    const right = Math.min(plot.right, x(hz * half)).toFixed(1);
    const db = spectrum.db[index];
    const noise = spectrum.noiseDb[index] ?? null;
    const share = spectrum.coherence[index] ?? null;
    if (isNumber(db)) {
      const doubt =
        (isNumber(share) && share < trustedCoherence) ||
        (isNumber(noise) && db - noise < trustedMarginDb);
      (doubt ? doubtful : trusted).push(box(left, right, y(db), plot.bottom));
    }
    if (isNumber(noise)) {
      floor.push(box(left, right, y(noise), plot.bottom));
      const joined = isNumber(spectrum.noiseDb[index - 1]) && floorLine.length > 0;
      const at = y(noise).toFixed(1);
      floorLine.push(joined ? `V${at}H${right}` : `M${left} ${at}H${right}`);
    }
    if (lane && isNumber(share)) {
      const top = lane.bottom - Math.min(1, Math.max(0, share)) * laneHeight;
      coherence.push(box(left, right, top, lane.bottom));
    }
  });
  return {
    width,
    height,
    plot,
    lane,
    topDb,
    frequencies: frequencyTicks(range, (hz) => x(hz), width < narrow ? 34 : 30),
    levels: Array.from({ length: spanDb / stepDb }, (_, index) => topDb - index * stepDb).map(
      (db) => ({ db, y: y(db) }),
    ),
    trusted: trusted.join(''),
    doubtful: doubtful.join(''),
    floor: floor.join(''),
    floorLine: floorLine.join(''),
    coherence: coherence.join(''),
  };
}

function box(left: string, right: string, top: number, bottom: number): string {
  return `M${left} ${bottom}V${top.toFixed(1)}H${right}V${bottom}Z`;
}

/** A whole ten above the loudest band; moves only when the spectrum leaves the axis or sinks low. */
function chooseTop({ db }: NoiseSpectrum, last: number | null): number {
  const loudest = Math.max(...db.filter(isNumber), -200);
  if (last !== null && loudest <= last - 1 && loudest > last - 25) return last;
  return Math.ceil((loudest + 4) / stepDb) * stepDb;
}
