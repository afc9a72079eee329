import {
  bandEnvelope,
  meanBandPower,
  type Envelope,
  type TransformedResponse,
} from './band-envelope';
import { octaveReach, octaveResponse, octaveWidthHz } from './octave-filter';

/** Seconds, times the width of the band in Hz, in which the filter builds up before a sound. */
const buildUpCycles = 3;

/**
 * Power along time of the octave band round `midHz`, filtered backwards in time (response conjugate):
 * the filter rings before each sound instead of after it, so that from the arrival on an exponential
 * decay stays exponential and the filter's own decay does not lengthen it. A filter run forwards
 * needs B·T > 16, this one B·T > 4, B the width of the band in Hz.
 * Source: Jacobsen and Rindel, JSV 117 (1987); ISO 3382-2:2008, 7.3 (both from memory).
 */
export function octaveEnvelope(response: TransformedResponse, midHz: number): Envelope {
  return bandEnvelope(response, reachOf(midHz), (hz) => {
    const { re, im } = octaveResponse(hz, midHz);
    return { re, im: -im };
  });
}

/** Mean square of steady noise in the octave band round `midHz`. */
export function octavePower(noise: TransformedResponse, midHz: number): number {
  return meanBandPower(noise, reachOf(midHz), (hz) => octaveResponse(hz, midHz));
}

/** How long before a sound its octave band builds up, s; 30 dB down there. */
export function buildUpSeconds(midHz: number): number {
  return buildUpCycles / octaveWidthHz(midHz);
}

function reachOf(midHz: number): readonly [number, number] {
  return [midHz / octaveReach, midHz * octaveReach];
}
