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

/**
 * Which of at least three spectra stand apart from all others in some band, and the usual noise
 * power of one, per band. The smallest distance of all counts as usual, so that one quiet pair is
 * enough to find out the rest.
 */
export function sortOut(
  spectra: readonly Float64Array[],
  bands: JudgeBands,
): { readonly good: readonly boolean[]; readonly usual: Float64Array } {
  const count = bands.edges.length - 1;
  const nearest = spectra.map(() => new Float64Array(count).fill(Infinity));
  const least = new Float64Array(count).fill(Infinity);
  spectra.forEach((one, i) => {
    for (let j = i + 1; j < spectra.length; j++) {
      const other = spectra[j];
      if (!other) continue;
      const distances = bandDistances(one, other, bands);
      distances.forEach((distance, band) => {
        least[band] = Math.min(least[band] ?? Infinity, distance);
        for (const n of [i, j]) {
          const mine = nearest[n];
          if (mine) mine[band] = Math.min(mine[band] ?? Infinity, distance);
        }
      });
    }
  });
  const powers = spectra.map((one) => bandPowers(one, bands));
  const signal = least.map((_, band) => Math.min(...powers.map((power) => power[band] ?? 0)));
  return {
    good: nearest.map((distances) => !isDisturbed(distances, least, signal)),
    usual: least.map((value) => value / 2),
  };
}
