/** A processor that turns down whatever is louder than a threshold by a share of the excess. */
export interface Dynamics {
  /** Dynamics begin here, dB re full scale of an output. */
  readonly thresholdDb: number;
  /** 0 leaves all as it is, 1 lets nothing be louder. */
  readonly share: number;
}

/** How long a peak is remembered, seconds: long beside a period of the bass. */
const releaseSeconds = 0.3;

/** Dynamics of one output; gives back the block, turned down sample by sample. */
export function createDynamics(
  { thresholdDb, share }: Dynamics,
  sampleRate: number,
): (block: Float64Array) => Float64Array {
  const keep = Math.exp(-1 / (releaseSeconds * sampleRate));
  const threshold = 10 ** (thresholdDb / 20);
  let peak = 0;
  return (block) =>
    block.map((value) => {
      peak = Math.max(Math.abs(value), peak * keep);
      return peak > threshold ? value * (threshold / peak) ** share : value;
    });
}
