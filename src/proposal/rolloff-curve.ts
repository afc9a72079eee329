import { curveOfLevels, type LedgerCurve } from '../../dsp/bass/ledger-curves';
import type { RolloffReading } from '../reading/reading';

/** Slopes below f10 by box, dB per octave: where it cannot be told, the gentler one claims less loss. */
const slopeDb = { closed: 12, vented: 24, 'cannot tell': 12 } as const;
/** A high-pass of second order or more is within 0.5 dB of flat so far above its f3. */
const flatFactor = 1.7;
const apart = 1 + 1e-6;

/**
 * Power of a speaker re its passband from its medians of f3, f6 and f10: straight in dB over log f
 * between them, falling on with the slope of its box below and flat from 1.7 × f3.
 */
export function rolloffCurve({ f3Hz, f6Hz, f10Hz, box }: RolloffReading): LedgerCurve {
  const f10 = f10Hz.median;
  const f6 = Math.max(f6Hz.median, f10 * apart);
  const f3 = Math.max(f3Hz.median, f6 * apart);
  const octaves = 6;
  return curveOfLevels(
    Float64Array.of(f10 / 2 ** octaves, f10, f6, f3, f3 * flatFactor),
    Float64Array.of(-10 - octaves * slopeDb[box.kind], -10, -6, -3, 0),
  );
}
