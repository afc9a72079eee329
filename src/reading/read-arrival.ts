import { plainLengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { Arrival } from '../../dsp/timing/arrival';
import { findArrival } from '../../dsp/timing/find-arrival';
import type { Channel } from '../system/channel';

export interface ArrivalFinding {
  readonly arrival: Arrival | null;
  /** Seconds after the response's zero of the path over the ceiling, else null. */
  readonly ceilingSeconds: number | null;
  readonly notes: readonly string[];
}

/** An early leak at least this far below a strongest peak this much later is a bounced height. */
const leakDb = -4;
const laterSeconds = 0.6e-3;
/** A path over the ceiling is at most this much later than the leak. */
const latestSeconds = 12e-3;

/**
 * First arrival of a speaker and, for a height whose strongest path comes later and well above it,
 * the path over the ceiling. Source of the rule: common practice; see dsp/timing/find-arrival.
 */
export function readArrival(ir: ImpulseResponse, channel: Channel): ArrivalFinding {
  const arrival = findArrival(ir);
  if (!arrival) {
    const note =
      channel.kind === 'sub'
        ? msg(
            'No arrival: the sub carries too little above the noise to time it. More level would settle it.',
          )
        : msg(
            'No arrival: nothing stands above the noise in the band it is timed in. More level would settle it.',
          );
    return { arrival: null, ceilingSeconds: null, notes: [note] };
  }
  const later = arrival.strongestSeconds - arrival.seconds;
  const bounced =
    channel.kind === 'height' &&
    arrival.firstDb <= leakDb &&
    later >= laterSeconds &&
    later <= latestSeconds;
  const notes: string[] = [];
  if (bounced) {
    notes.push(
      msg(
        'Bounced off the ceiling: the distance is that of the early leak, the ceiling path is what is heard.',
      ),
    );
  }
  if (channel.kind === 'sub') {
    notes.push(
      msg(
        str`The arrival of a sub is read from its onset in a narrow band, good to about ${plainLengthText(0.5)}: set its distance by how it sums with the speakers.`,
      ),
    );
  }
  if (arrival.bandAdapted && channel.kind !== 'sub') {
    notes.push(
      msg('No treble in this response: the arrival is read in a lower band and is less certain.'),
    );
  }
  if (arrival.earlierPossible) {
    notes.push(msg('Noise could hide an earlier, weaker arrival. More level would settle it.'));
  }
  return { arrival, ceilingSeconds: bounced ? arrival.strongestSeconds : null, notes };
}
