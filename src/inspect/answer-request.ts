import { groundTake, type GroundedTake } from '../reading/ground-take';
import { isTrouble, type Trouble } from '../trouble';
import type { ChannelLabel } from '../system/channel';
import { answerBass } from './answer-bass';
import { answerDecay } from './answer-decay';
import { answerPhase } from './answer-phase';
import { answerResponses } from './answer-responses';
import { answerTime } from './answer-time';
import type { HeardSource } from './heard-source';
import type { InspectAnswer, InspectRequest, SoundSource } from './inspection';
import { responseOfGrounded, type TakeResponse } from './response-of-take';
import type { TakeSound } from './take-sound';

/** Answers requests out of the takes it was given. */
export interface Answerer {
  add(sound: TakeSound): void;
  /** A Trouble when a speaker's segment holds nothing. Throws RangeError for a take it never got. */
  answer(request: InspectRequest): InspectAnswer | Trouble;
}

/**
 * Responses are gathered once for each speaker of a take. Clock and checks are kept of the take last
 * looked at only: with them goes a copy of its samples.
 */
export function createAnswerer(): Answerer {
  const takes = new Map<string, TakeSound>();
  let last: { readonly takeId: string; readonly grounded: GroundedTake | Trouble } | null = null;
  const responses = new Map<string, TakeResponse | Trouble>();
  const gather = (takeId: string, channel: ChannelLabel): TakeResponse | Trouble => {
    const sound = takes.get(takeId);
    if (!sound) throw new RangeError(`the sound of take ${takeId} must be added first`);
    const { schedule, samples, sampleRate, loopback, calibration, inForce } = sound;
    if (last?.takeId !== takeId) {
      const capture = { samples, sampleRate, loopback };
      last = { takeId, grounded: groundTake(schedule, capture, calibration) };
    }
    const { grounded } = last;
    return isTrouble(grounded) ? grounded : responseOfGrounded(grounded, channel, inForce);
  };
  const respond = ({ takeId, channel }: SoundSource): TakeResponse | Trouble => {
    const key = `${takeId} ${channel}`;
    const response = responses.get(key) ?? gather(takeId, channel);
    responses.set(key, response);
    return response;
  };
  const hear = (sources: readonly SoundSource[]): HeardSource[] | Trouble => {
    const heard: HeardSource[] = [];
    for (const source of sources) {
      const response = respond(source);
      if (isTrouble(response)) return response;
      heard.push({ source, response, bandHz: bandOf(takes.get(source.takeId), source.channel) });
    }
    return heard;
  };
  return {
    add: (sound) => void takes.set(sound.takeId, sound),
    answer(request) {
      const heard = hear('sources' in request ? request.sources : [request.source]);
      return isTrouble(heard) ? heard : answerFrom(heard, request);
    },
  };
}

function bandOf(sound: TakeSound | undefined, channel: ChannelLabel): [number, number] {
  const segment = sound?.schedule.segments.find((one) => one.channel === channel);
  return segment ? [segment.sweep.startHz, segment.sweep.endHz] : [0, Infinity];
}

function answerFrom(heard: readonly HeardSource[], request: InspectRequest): InspectAnswer {
  switch (request.kind) {
    case 'responses':
      return answerResponses(heard, request);
    case 'phase':
      return answerPhase(heard);
    case 'time':
      return answerTime(heard);
  }
  const [one] = heard;
  if (!one) throw new RangeError('a request must name a source, got none');
  const { source, response } = one;
  switch (request.kind) {
    case 'decay':
      return answerDecay(one, request.volume);
    case 'bass':
      return answerBass(one);
    case 'impulse': {
      const arrivalSeconds = response.arrival?.seconds ?? null;
      return { kind: 'impulse', source, ir: response.ir, arrivalSeconds };
    }
  }
}
