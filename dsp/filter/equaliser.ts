import type { Biquad } from './biquad';

/** One equaliser section; gainDb counts for peak and shelves only. */
export interface EqualiserSpec {
  readonly kind:
    | 'low-pass'
    | 'high-pass'
    | 'band-pass'
    | 'notch'
    | 'all-pass'
    | 'peak'
    | 'low-shelf'
    | 'high-shelf';
  readonly hz: number;
  readonly q: number;
  readonly gainDb?: number;
}

/**
 * Biquad of an equaliser section; the band-pass has 0 dB at its centre.
 * Throws RangeError unless 0 < hz < sampleRate/2, q > 0 and the gain is finite.
 * Source: Audio EQ Cookbook, W3C Working Group Note (2021).
 */
export function equaliserSection(spec: EqualiserSpec, sampleRate: number): Biquad {
  const { kind, hz, q, gainDb = 0 } = spec;
  if (!(hz > 0 && hz < sampleRate / 2)) {
    throw new RangeError(`hz must lie between 0 and ${sampleRate / 2}, got ${hz}`);
  }
  if (!(q > 0 && q < Infinity)) throw new RangeError(`q must be positive, got ${q}`);
  if (!Number.isFinite(gainDb)) throw new RangeError(`gainDb must be finite, got ${gainDb}`);
  const w0 = (2 * Math.PI * hz) / sampleRate;
  const cos = Math.cos(w0);
  const alpha = Math.sin(w0) / (2 * q);
  const gain = 10 ** (gainDb / 40);
  const plain = [1 + alpha, -2 * cos, 1 - alpha] as const;
  switch (kind) {
    case 'low-pass':
      return normalise([(1 - cos) / 2, 1 - cos, (1 - cos) / 2], plain);
    case 'high-pass':
      return normalise([(1 + cos) / 2, -1 - cos, (1 + cos) / 2], plain);
    case 'band-pass':
      return normalise([alpha, 0, -alpha], plain);
    case 'notch':
      return normalise([1, -2 * cos, 1], plain);
    case 'all-pass':
      return normalise([1 - alpha, -2 * cos, 1 + alpha], plain);
    case 'peak':
      return normalise(
        [1 + alpha * gain, -2 * cos, 1 - alpha * gain],
        [1 + alpha / gain, -2 * cos, 1 - alpha / gain],
      );
    case 'low-shelf':
      return shelf(gain, cos, alpha, 1);
    case 'high-shelf':
      return shelf(gain, cos, alpha, -1);
  }
}

/** The high shelf is the low shelf with the frequency axis turned round. */
function shelf(gain: number, cos: number, alpha: number, side: 1 | -1): Biquad {
  const up = gain + 1;
  const down = (gain - 1) * side;
  const slope = 2 * Math.sqrt(gain) * alpha;
  const turn = (gain - 1) * cos * side;
  return normalise(
    [gain * (up - turn + slope), 2 * gain * (down - up * cos), gain * (up - turn - slope)],
    [up + turn + slope, -2 * (down + up * cos), up + turn - slope],
  );
}

function normalise(
  b: readonly [number, number, number],
  a: readonly [number, number, number],
): Biquad {
  return { b0: b[0] / a[0], b1: b[1] / a[0], b2: b[2] / a[0], a1: a[1] / a[0], a2: a[2] / a[0] };
}
