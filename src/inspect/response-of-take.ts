import { msg, str } from '@lit/localize';
import type { PowerCurve } from '../../dsp/response/curve';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { smoothKind, type SmoothingKind } from '../../dsp/response/smoothing-kind';
import type { Arrival } from '../../dsp/timing/arrival';
import type { MicrophoneCalibration } from '../microphone/calibration';
import { groundTake, type GroundedTake, type TakeCapture } from '../reading/ground-take';
import { readArrival } from '../reading/read-arrival';
import type { Fault } from '../reading/reading';
import { sayIfSilent } from '../reading/silent-channel';
import { spectrumWithout } from '../reading/spectrum-without';
import { channelsInForce, untouched, type ChannelInForce } from '../reading/take-out-settings';
import type { ChannelLabel } from '../system/channel';
import type { SettingsInForce } from '../system/declared-settings';
import type { Schedule } from '../take/schedule';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { gatherAsRead } from './gather-as-read';

/** One channel of a take, as its reading has it; plain data, so that it travels from a worker. */
export interface TakeResponse {
  readonly channel: ChannelLabel;
  /**
   * Mean of the sweeps in use re a sweep at full scale, without the microphone's response; what is in
   * force, and how far the take's peak lies below full scale, is in it.
   */
  readonly ir: ImpulseResponse;
  /** Silence through the same path, at the power the noise has in `ir`; null when none is known. */
  readonly noise: ImpulseResponse | null;
  /** First arrival in `ir`; null when it cannot be told. */
  readonly arrival: Arrival | null;
  readonly inForce: ChannelInForce;
  readonly faults: readonly Fault[];
  readonly notes: readonly string[];
}

export interface TakeResponseOptions {
  /** Response of the microphone, taken out; null: none known. */
  readonly calibration: MicrophoneCalibration | null;
  /** What the processor had in force; null: there is no processor. */
  readonly inForce: SettingsInForce | null;
}

/**
 * The impulse response of one channel of a take, gathered as readTake gathers it, without reading
 * the others. A Trouble when the capture cannot be this take's, when the channel's segments are
 * spoilt, and when it stays silent. Throws RangeError for a channel that the take does not play.
 */
export function responseOfTake(
  schedule: Schedule,
  capture: TakeCapture,
  label: ChannelLabel,
  { calibration, inForce }: TakeResponseOptions,
): TakeResponse | Trouble {
  requirePlayed(schedule, label);
  const grounded = groundTake(schedule, capture, calibration);
  return isTrouble(grounded) ? grounded : responseOfGrounded(grounded, label, inForce);
}

/** The same of a take whose clock and checks are known already, for one channel after another. */
export function responseOfGrounded(
  grounded: GroundedTake,
  label: ChannelLabel,
  inForce: SettingsInForce | null,
): TakeResponse | Trouble {
  const { layout } = grounded;
  const { schedule } = grounded.ground;
  requirePlayed(schedule, label);
  const channel = layout.channels.find((one) => one.label === label);
  if (!channel) throw new RangeError(`the layout ${layout.name} must have ${label}`);
  const { ir, noise, faults, spoilt, notes } = gatherAsRead(grounded, label);
  if (!ir) return trouble('failed', msg(str`No response of ${label}. ${spoilt ?? ''}`).trim());
  const found = readArrival(ir, channel);
  const silent = sayIfSilent(channel, ir, noise, found.arrival);
  if (silent !== null) return trouble('silence', msg(str`No response of ${label}: ${silent}`));
  const settings = inForce && channelsInForce(layout, schedule.reference, inForce);
  return {
    channel: label,
    ir,
    noise,
    arrival: found.arrival,
    inForce: settings?.get(label) ?? untouched,
    faults,
    notes: [...notes, ...found.notes],
  };
}

function requirePlayed({ segments, channels }: Schedule, label: ChannelLabel): void {
  if (segments.some(({ channel }) => channel === label)) return;
  throw new RangeError(`the take must play ${label}, it plays ${channels.join(', ')}`);
}

/**
 * Power of a channel and of its noise at some frequencies, smoothed alike, with the crossover in
 * force divided out; a trim in force stays in it. Throws RangeError as smoothKind does.
 */
export function responseCurve(
  { ir, noise, inForce }: Pick<TakeResponse, 'ir' | 'noise' | 'inForce'>,
  hz: ArrayLike<number>,
  kind: SmoothingKind,
): PowerCurve {
  const read = (one: ImpulseResponse): Float64Array =>
    smoothKind(spectrumWithout(inForce, one), hz, kind);
  return { hz, power: read(ir), noisePower: noise && read(noise) };
}
