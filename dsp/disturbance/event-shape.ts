import type { BandTiles } from './band-tiles';
import type { Span } from './find-events';

/** An event as the product of a course in time and a spectrum. */
export interface EventShape {
  readonly span: Span;
  /** Per frame from span.from on. */
  readonly course: Float64Array;
  /** Per band: power re the course. */
  readonly spectrum: Float64Array;
}

const rounds = 6;
/** Share of the course a band must be seen in before its own level is believed. */
const leastSeen = 0.12;
/** Share of the spectrum a frame must let see before its course is believed. */
const leastKnown = 0.02;

/**
 * Best product of course and spectrum for what is seen of an event, hidden tiles left out;
 * bands are weighed by `weights`. A band hidden all along has the level between its neighbours'
 * (a straight line in decibels), and at least what is left of the one below it at 6 dB per
 * octave and of the one above it at 3 dB; below the lowest seen one the same density. What is not
 * heard may be as loud as the noise. Source: Lee and Seung, Nature 401 (1999), one component,
 * missing values.
 */
export function eventShape(
  seen: Float64Array,
  tiles: BandTiles,
  own: Uint8Array,
  weights: readonly number[],
  floors: Float64Array,
  span: Span,
): EventShape {
  const { bands, frames } = tiles;
  const length = span.to - span.from;
  const course = new Float64Array(length).fill(1);
  const spectrum = new Float64Array(bands.length);
  const visible = new Float64Array(bands.length);
  for (let round = 0; round < rounds; round++) {
    let whole = 0;
    for (let n = 0; n < length; n++) whole += course[n] ?? 0;
    for (let b = 0; b < bands.length; b++) {
      let sum = 0;
      let weight = 0;
      for (let n = 0; n < length; n++) {
        const at = b * frames + span.from + n;
        if (own[at]) continue;
        sum += seen[at] ?? 0;
        weight += course[n] ?? 0;
      }
      spectrum[b] = weight > 0 ? sum / weight : 0;
      visible[b] = whole > 0 ? weight / whole : 0;
    }
    if (round === rounds - 1) break;
    const sure = weights.map((w, b) => ((visible[b] ?? 0) < leastSeen ? 0 : w));
    const all = sure.reduce((sum, w, b) => sum + w * (spectrum[b] ?? 0), 0);
    const known = new Uint8Array(length);
    for (let n = 0; n < length; n++) {
      let sum = 0;
      let weight = 0;
      for (let b = 0; b < sure.length; b++) {
        const at = b * frames + span.from + n;
        if (own[at]) continue;
        const w = sure[b] ?? 0;
        sum += w * (seen[at] ?? 0);
        weight += w * (spectrum[b] ?? 0);
      }
      known[n] = weight > leastKnown * all ? 1 : 0;
      course[n] = known[n] ? sum / weight : 0;
    }
    bridgeCourse(course, known);
  }
  bridge(spectrum, visible, floors, tiles);
  return { span, course, spectrum };
}

/** Straight lines over frames that show nothing of the event. */
function bridgeCourse(course: Float64Array, known: Uint8Array): void {
  for (let n = 0; n < course.length; n++) {
    if (known[n]) continue;
    let end = n;
    while (end < course.length && !known[end]) end++;
    const before = n > 0 ? course[n - 1] : undefined;
    const after = end < course.length ? course[end] : undefined;
    const from = before ?? after ?? 1;
    const to = after ?? before ?? 1;
    for (let m = n; m < end; m++) course[m] = from + ((to - from) * (m - n + 1)) / (end - n + 1);
    n = end;
  }
}

function bridge(
  spectrum: Float64Array,
  visible: Float64Array,
  floors: Float64Array,
  { bands }: BandTiles,
): void {
  const sure = bands.map((_, b) => (visible[b] ?? 0) >= leastSeen);
  const width = (b: number): number => (bands[b]?.highHz ?? 0) - (bands[b]?.lowHz ?? 0);
  for (const [b, known] of sure.entries()) {
    if (known) continue;
    const below = sure.lastIndexOf(true, b);
    const above = sure.indexOf(true, b);
    const low =
      below >= 0 ? Math.max(spectrum[below] ?? 0, floors[below] ?? 0) / width(below) : null;
    const high =
      above >= 0 ? Math.max(spectrum[above] ?? 0, floors[above] ?? 0) / width(above) : null;
    const hz = bands[b]?.midHz ?? 1;
    // What is hidden is taken to fall off no faster than so.
    const fromLow = (low ?? 0) * ((bands[below]?.midHz ?? 0) / hz) ** 2;
    const fromHigh = above < 0 ? 0 : ((high ?? 0) * hz) / (bands[above]?.midHz ?? 1);
    const along = (b - below) / (above - below);
    const between = low !== null && high !== null ? low ** (1 - along) * high ** along : 0;
    const density = Math.max(between, fromLow, low === null ? (high ?? 0) : fromHigh);
    spectrum[b] = Math.max(spectrum[b] ?? 0, density * width(b));
  }
}
