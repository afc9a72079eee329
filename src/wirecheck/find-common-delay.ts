import { longestDelaySeconds, type HeardBurst } from './hear-bursts';

const binSeconds = 0.001;
/** Speakers of one system arrive within this of each other. */
const spreadBins = 25;
/** Power over the middle of all bins that counts as an arrival, and above which more is no surer. */
const leastRise = 30;
const mostRise = 1e4;
/** An arrival has at least this share of the largest power that follows. */
const firstShare = 0.03;

/**
 * The delay of the audio path that makes most bursts arrive together, seconds from when they were
 * due to just before the first; null when none arrives anywhere. Bursts of other channels, which
 * stand at other places and differ in length, smear out; a channel that is silent adds nothing.
 */
export function findCommonDelay(bursts: readonly HeardBurst[]): number | null {
  const bins = Math.round(longestDelaySeconds / binSeconds) + spreadBins;
  const score = new Float64Array(bins);
  const all = bursts.map(({ response }) => risesOf(response, bins));
  for (const rises of all) {
    for (let at = 0; at < bins; at++) {
      const most = largestIn(rises, at);
      if (most >= leastRise) score[at] = (score[at] ?? 0) + Math.log(Math.min(most, mostRise));
    }
  }
  const best = score.reduce((most, value) => Math.max(most, value), 0);
  if (best === 0) return null;
  const from = score.findIndex((value) => value >= best - 1e-9);
  const firsts = all.flatMap((rises) => {
    const least = Math.max(leastRise, firstShare * largestIn(rises, from));
    const at = rises.subarray(from, from + spreadBins).findIndex((rise) => rise >= least);
    return at < 0 ? [] : [from + at];
  });
  return Math.max(0, Math.min(...firsts) - 1) * binSeconds;
}

function largestIn(rises: Float64Array, from: number): number {
  return rises.subarray(from, from + spreadBins).reduce((most, one) => Math.max(most, one), 0);
}

/** Largest power per millisecond from zero delay on, over the middle of all of them. */
function risesOf(
  { samples, sampleRate, zeroIndex }: HeardBurst['response'],
  bins: number,
): Float64Array {
  const rises = new Float64Array(bins);
  const width = binSeconds * sampleRate;
  for (let bin = 0; bin < bins; bin++) {
    const from = zeroIndex + Math.round(bin * width);
    let most = 0;
    for (let n = from; n < from + width; n++) most = Math.max(most, (samples[n] ?? 0) ** 2);
    rises[bin] = most;
  }
  const middle = rises.slice().sort()[bins >> 1] ?? 0;
  return rises.map((value) => value / Math.max(middle, 1e-30));
}
