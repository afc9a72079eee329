const BEFORE_SECONDS = 0.1;
const AFTER_SECONDS = 1.25;

/** The end of a cut fades over this, seconds. */
export const TAPER_SECONDS = 0.25;

/** A stretch of a response and where it begins there. */
export interface Cut {
  readonly samples: Float64Array;
  readonly start: number;
}

/** From 0.1 s before the sample `peak` to 1.25 s after it. */
export function cutAround(samples: Float64Array, sampleRate: number, peak: number): Cut {
  const start = Math.max(0, peak - Math.round(BEFORE_SECONDS * sampleRate));
  const end = Math.min(samples.length, peak + Math.round(AFTER_SECONDS * sampleRate));
  const cut = samples.slice(start, end);
  taper(cut, sampleRate, peak - start);
  return { samples: cut, start };
}

/** As long a stretch, faded the same way, from the same place of another recording if it holds it. */
export function cutLike(samples: Float64Array, sampleRate: number, like: Cut): Float64Array {
  if (samples.length === 0) throw new RangeError('noise must hold samples, got none');
  const length = Math.min(like.samples.length, samples.length);
  const start = Math.min(like.start, samples.length - length);
  const cut = samples.slice(start, start + length);
  taper(cut, sampleRate, 0);
  return cut;
}

/** Index of the largest sample. RangeError for silence and NaN. */
export function peakIndex(samples: Float64Array): number {
  let best = 0;
  let at = 0;
  for (let n = 0; n < samples.length; n++) {
    const size = Math.abs(samples[n] ?? 0);
    if (!Number.isFinite(size)) throw new RangeError(`samples must be finite, got ${samples[n]}`);
    if (size > best) {
      best = size;
      at = n;
    }
  }
  if (best === 0) throw new RangeError('samples must hold a response, got silence');
  return at;
}

/** Half-Hann over the last 0.25 s, or over what stands after `peak` when that is less. */
function taper(cut: Float64Array, sampleRate: number, peak: number): void {
  const length = Math.min(Math.round(TAPER_SECONDS * sampleRate), cut.length - 1 - peak);
  for (let n = 1; n <= length; n++) {
    const i = cut.length - n;
    cut[i] = (cut[i] ?? 0) * 0.5 * (1 - Math.cos((Math.PI * n) / (length + 1)));
  }
}
