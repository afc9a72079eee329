/** Bands in which a period is judged: half octaves, wide enough that noise alone varies little. */
export interface JudgeBands {
  /** First bin of each band, and the bin after the last. */
  readonly edges: readonly number[];
}

const leastBins = 24;

/** Half-octave bands from bin `first` to `last`, none of fewer than 24 bins unless all are fewer. */
export function judgeBands(first: number, last: number): JudgeBands {
  const edges = [first];
  let from = first;
  while (from <= last) {
    let to = Math.max(Math.ceil(from * Math.SQRT2), from + leastBins);
    if (to > last || last + 1 - to < leastBins) to = last + 1;
    edges.push(to);
    from = to;
  }
  return { edges };
}

/** Mean |A − B|² in each band. */
export function bandDistances(
  a: Float64Array,
  b: Float64Array,
  { edges }: JudgeBands,
): Float64Array {
  return Float64Array.from({ length: edges.length - 1 }, (_, band) => {
    const from = edges[band] ?? 0;
    const to = edges[band + 1] ?? 0;
    let sum = 0;
    for (let n = 2 * from; n < 2 * to; n++) sum += ((a[n] ?? 0) - (b[n] ?? 0)) ** 2;
    return sum / (to - from);
  });
}

/** Mean |A|² in each band. */
export function bandPowers(a: Float64Array, bands: JudgeBands): Float64Array {
  return bandDistances(a, new Float64Array(a.length), bands);
}

/** A band that is this much over its usual noise power was disturbed: 10 dB. */
const most = 10;
/** What stays this far below the signal disturbs nothing: 50 dB. */
const harmless = 1e-5;

/** Whether any band lies far over what is usual there, and not far below the signal. */
export function isDisturbed(
  distances: Float64Array,
  usual: Float64Array,
  signal: Float64Array,
): boolean {
  return distances.some((distance, band) => {
    return distance > Math.max(most * (usual[band] ?? 0), harmless * (signal[band] ?? 0));
  });
}

/** Of all pairs' distances, this share of the smallest is taken to be of undisturbed periods. */
const calmShare = 0.3;

/**
 * Which of at least three spectra stand apart from all others in some band, and the usual noise
 * power of one, per band. A spectrum is judged by its nearest neighbour, against the smallest of
 * the distances: up to two disturbed ones of five are found. Hum, whose distances differ from pair
 * to pair, passes.
 */
export function sortOut(
  spectra: readonly Float64Array[],
  bands: JudgeBands,
): { readonly good: readonly boolean[]; readonly usual: Float64Array } {
  const pairs = spectra.flatMap((one, i) =>
    spectra.slice(i + 1).map((other, n) => ({
      i,
      j: i + 1 + n,
      distances: bandDistances(one, other, bands),
    })),
  );
  const powers = spectra.map((one) => bandPowers(one, bands));
  const overBands = (value: (band: number) => number): Float64Array =>
    Float64Array.from({ length: bands.edges.length - 1 }, (_, band) => value(band));
  const calm = overBands((band) => {
    const sorted = pairs.map(({ distances }) => distances[band] ?? 0).sort((a, b) => a - b);
    return sorted[Math.ceil(calmShare * sorted.length) - 1] ?? 0;
  });
  const signal = overBands((band) => Math.min(...powers.map((power) => power[band] ?? 0)));
  const good = spectra.map((_, n) => {
    const mine = pairs.filter(({ i, j }) => i === n || j === n);
    const nearest = overBands((band) => {
      return Math.min(...mine.map(({ distances }) => distances[band] ?? 0));
    });
    return !isDisturbed(nearest, calm, signal);
  });
  const kept = pairs.filter(({ i, j }) => good[i] === true && good[j] === true);
  const usual = overBands((band) => {
    const sum = kept.reduce((total, { distances }) => total + (distances[band] ?? 0), 0);
    return sum / Math.max(2 * kept.length, 1);
  });
  return { good, usual };
}
