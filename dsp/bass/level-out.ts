import type { SeatTransfers, Transfer } from './transfer';

/** What lies farther below a speaker's loudest is not lifted any more, dB: it may be noise. */
const deepestDb = 20;

/**
 * Responses as they would be were the source as loud at every frequency and not late anywhere:
 * H·Ā/(|A|² + |A|²max/100), A the response of the source alone, so that what is 20 dB below its
 * loudest is lifted half as far as it lies down. What the room returns then stands apart from the
 * direct sound as clearly as the band allows. Throws RangeError for lengths that differ. Wiener's
 * deconvolution with a constant floor (common practice).
 */
export function levelOut(seats: SeatTransfers, source: Transfer): SeatTransfers {
  const power = source.re.map((a, k) => a * a + (source.im[k] ?? 0) ** 2);
  const floor = power.reduce((most, p) => Math.max(most, p), 0) * 10 ** (-deepestDb / 10);
  return seats.map(({ re, im }) => {
    if (re.length !== power.length || im.length !== power.length) {
      throw new RangeError(`responses must hold ${power.length} frequencies, got ${re.length}`);
    }
    const turned = (mine: Float64Array, other: Float64Array, sign: 1 | -1): Float64Array =>
      mine.map(
        (x, k) =>
          (x * (source.re[k] ?? 0) + sign * (other[k] ?? 0) * (source.im[k] ?? 0)) /
          ((power[k] ?? 0) + floor),
      );
    return { re: turned(re, im, 1), im: turned(im, re, -1) };
  });
}
