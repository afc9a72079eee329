import { bassDecay } from '../../dsp/decay/bass-decay';
import { readModes } from '../../dsp/decay/read-modes';
import { arrivalOf } from './arrival-of';
import type { HeardSource } from './heard-source';
import type { BassAnswer } from './inspection';

/** Above this the modes of a living room stand too close to be told one by one, Hz. */
const modesToHz = 200;

/** How the bass of one speaker fades, and the modes that ring in it. */
export function answerBass({ source, response }: HeardSource): BassAnswer {
  const { ir, noise } = response;
  const arrivalSeconds = arrivalOf(response);
  return {
    kind: 'bass',
    source,
    picture: bassDecay(ir, { noise, arrivalSeconds, spanSeconds: 0.8 }),
    modes: readModes(ir, { noise, arrivalSeconds, toHz: modesToHz }),
  };
}
