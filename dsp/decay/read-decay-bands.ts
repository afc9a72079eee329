import { bandMidpoints } from '../level/bands';
import type { ImpulseResponse } from '../response/impulse-response';
import { transformResponse } from './band-envelope';
import { checkedArrival } from './checked-arrival';
import { readDecayBand, type DecayBand } from './decay-band';
import { readMidDecay, type MidDecay } from './mid-decay';
import { buildUpSeconds, octaveEnvelope, octavePower } from './octave-envelope';

export interface DecayBandsOptions {
  /** Steady noise that went through the same deconvolution; null: the response's own end tells. */
  readonly noise: ImpulseResponse | null;
  /** When the sound arrives, s after zero delay; left out: the largest sample. */
  readonly arrivalSeconds?: number;
  /** Bands with a midpoint in this range are read, Hz; default 31 Hz to 16 kHz. */
  readonly bandsHz?: readonly [number, number];
}

/** Decay of a room in octave bands. */
export interface DecayReading {
  readonly bands: readonly DecayBand[];
  readonly mid: MidDecay;
}

const standardBandsHz = [31, 16_000] as const;
/** A band is read when its midpoint lies below this share of the sample rate. */
const highestShare = 0.45;

/**
 * Reverberation of a response: EDT, T20 and T30 of every octave band with 90 % intervals,
 * non-linearity and curvature, or a sentence instead of a number that cannot be told; and the means
 * of 500 Hz and 1 kHz. Backward integration of the bands' power, filtered backwards in time, with
 * the noise taken off and the energy beyond the knee added. Bands beyond 0.45 of the sample rate
 * are left out. Throws RangeError for an arrival outside the response or a range as bandMidpoints.
 * Source: ISO 3382-1:2009 and ISO 3382-2:2008 (from memory); see readDecayTime.
 */
export function readDecayBands(ir: ImpulseResponse, options: DecayBandsOptions): DecayReading {
  const { noise, bandsHz = standardBandsHz } = options;
  const arrivalSeconds = checkedArrival(ir, options.arrivalSeconds);
  const top = Math.min(bandsHz[1], highestShare * ir.sampleRate);
  const mids = top < bandsHz[0] ? [] : [...bandMidpoints(bandsHz[0], top, 1)];
  const padding = buildUpSeconds(mids[0] ?? bandsHz[0]);
  const heard = transformResponse(ir, padding);
  const hiss = noise && transformResponse(noise, padding);
  const bands = mids.map((midHz) => {
    const envelope = octaveEnvelope(heard, midHz);
    const arrival = envelope.zeroIndex + arrivalSeconds * envelope.sampleRate;
    return readDecayBand(envelope, hiss && octavePower(hiss, midHz), arrival, midHz);
  });
  return { bands, mid: readMidDecay(bands) };
}
