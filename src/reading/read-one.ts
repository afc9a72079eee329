import { correctForMicrophone } from '../../dsp/response/microphone-correction';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { Clock } from '../../dsp/timing/clock';
import type { MicrophoneCalibration } from '../microphone/calibration';
import type { Channel, ChannelLabel } from '../system/channel';
import type { Schedule } from '../take/schedule';
import type { CloseTo } from './close-to';
import type { SegmentCheck } from './check-capture';
import { gatherSweeps, type GatheredSweeps } from './gather-sweeps';
import { createResponder } from './impulse-responses';
import type { SharedSound } from './shared-sound';
import { correctDistortion } from './read-distortion';
import { readChannel } from './read-channel';
import type { ChannelReading } from './reading';
import type { ReadingFrame } from './reading-frame';
import { untouched, type ChannelInForce } from './take-out-settings';
import type { Samples } from '../../dsp/signal/samples';

/** What all channels of a take are gathered with. */
export interface TakeGround {
  readonly schedule: Schedule;
  readonly clock: Clock;
  /** One per segment of the schedule. */
  readonly checks: readonly SegmentCheck[];
  readonly calibration: MicrophoneCalibration | null;
  readonly shared: SharedSound;
}

/** What all channels of a take are read with but the frame; plain data: it travels to a worker. */
export interface UnframedTake extends TakeGround {
  readonly channels: readonly Channel[];
  /** Null without a processor. */
  readonly inForce: ReadonlyMap<ChannelLabel, ChannelInForce> | null;
  /** The speaker the microphone was held to; null at a seat. */
  readonly close: CloseTo | null;
}

/** What all channels of a take are read with. */
export interface FramedTake extends UnframedTake {
  readonly frame: ReadingFrame;
}

/** A stretch of the capture; sample 0 of it is the capture's sample `start`. */
export interface CapturePiece {
  readonly samples: Samples;
  readonly start: number;
}

/** All sweeps of one channel together, without the microphone's own response. */
export function gatherChannel(
  { schedule, clock, checks, calibration, shared }: TakeGround,
  label: ChannelLabel,
  { samples, start }: CapturePiece,
): GatheredSweeps {
  const sweeps = schedule.segments.flatMap((segment, index) => {
    const check = checks[index];
    return segment.channel === label && check ? [{ segment, check: checkFrom(check, start) }] : [];
  });
  const responder = createResponder(samples, clockFrom(clock, start), schedule, shared);
  const { ir, noise, distortion, ...rest } = gatherSweeps(sweeps, responder);
  const corrected = (response: ImpulseResponse): ImpulseResponse =>
    calibration ? correctForMicrophone(response, calibration) : response;
  return {
    ir: ir && corrected(ir),
    noise: noise && corrected(noise),
    ...(distortion && {
      distortion: calibration ? correctDistortion(distortion, calibration) : distortion,
    }),
    ...rest,
  };
}

/** Reads one channel of the layout, from its sweeps where they are gathered already. */
export function readOne(
  take: FramedTake,
  channel: Channel,
  piece: CapturePiece,
  gathered = gatherChannel(take, channel.label, piece),
): ChannelReading {
  const inForce = take.inForce?.get(channel.label) ?? untouched;
  const close = take.close?.channel === channel.label ? take.close : null;
  return readChannel({ channel, ...gathered, inForce, close }, take.frame);
}

/** The clock of a capture that begins at its sample `start`. */
function clockFrom(clock: Clock, start: number): Clock {
  if (start === 0) return clock;
  const segments = clock.segments.map((one) => ({ ...one, captureAt: one.captureAt - start }));
  return { ...clock, segments };
}

function checkFrom(check: SegmentCheck, start: number): SegmentCheck {
  if (start === 0 || !check.mend) return check;
  return { ...check, mend: { ...check.mend, atSample: check.mend.atSample - start } };
}
