/**
 * Uniform numbers 0 ≤ u < 1 that a seed repeats exactly; period 2^128 − 1.
 * Any finite seed; seeds that differ give unrelated streams. Throws RangeError otherwise.
 * Source: xoshiro128** (Blackman and Vigna, 2018), state filled by a 32-bit integer hash.
 */
export function seededRandom(seed: number): () => number {
  if (!Number.isFinite(seed)) throw new RangeError(`seed must be finite, got ${seed}`);
  const words = new Int32Array(new Float64Array([seed]).buffer);
  let filler = hash((words[0] ?? 0) ^ hash(words[1] ?? 0));
  const next = (): number => (filler = hash(filler + 0x9e3779b9));
  let [a, b, c, d] = [next(), next(), next(), next() | 1];
  return () => {
    const result = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return result / 2 ** 32;
  };
}

/** Normal numbers, mean 0 and variance 1, out of a uniform source (Box and Muller, 1958). */
export function gaussian(random: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}

/** Mixes the bits of a 32-bit integer; one to one. */
function hash(word: number): number {
  let mixed = word | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

function rotate(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}
