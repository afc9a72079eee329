import { clipRecording, damageRecording, type BufferFault } from '../../dsp/room/faults';
import { impulseResponseAt } from '../../dsp/room/impulse-response-at';
import { roomNoise } from '../../dsp/room/room-noise';
import { resampleMix } from '../../src/rig/practice-capture';
import { convolver } from '../../src/rig/practice-convolver';
import type { PracticeSystem } from '../../src/rig/practice-system';
import type { ChannelLabel } from '../../src/system/channel';
import { scheduleEvents, type ScheduledEvent } from '../../src/take/render';
import type { Schedule } from '../../src/take/schedule';

/** A take in a simulated room, computed once and recorded as often as one likes. */
export interface HeardTake {
  /** Room and speaker from the sample of emission on, 48 kHz. */
  readonly responses: ReadonlyMap<ChannelLabel, Float64Array>;
  /**
   * The recording with pink noise and hiss of equal power, together `snrDb` under the marks, and
   * with frames lost or repeated.
   */
  record(snrDb: number, buffers?: readonly BufferFault[]): Float32Array;
}

const rate = 48000;
/** So far the bass is heard to fall. */
const fallDb = 45;

/** Lets a system play a take; the room is heard for `seconds`, after which it must be quiet. */
export async function hearTake(
  system: PracticeSystem,
  schedule: Schedule,
  seconds: number,
): Promise<HeardTake> {
  const { room, microphone, sensitivityDb, seed } = system;
  const mix = new Float64Array(schedule.lengthSamples);
  const responses = new Map<ChannelLabel, Float64Array>();
  const events = eventsOf(schedule);
  for (const { channel, speaker } of system.speakers) {
    const response = impulseResponseAt(room, speaker, microphone, rate, seconds, fallDb);
    responses.set(channel, response);
    const through = convolver(response);
    for (const event of events) {
      if (event.channel === channel) through.add(mix, event.startSample, event.samples);
    }
  }
  const heard = await resampleMix(mix, system, schedule);
  if (!heard) throw new RangeError('the rendering must run to its end');
  const gain = 10 ** (sensitivityDb / 20);
  const level = gain * markRms(mix, schedule);
  const power = { pink: Math.SQRT1_2, hiss: Math.SQRT1_2 };
  const noise = roomNoise(heard.length, rate, seed + 0.875, power);
  return {
    responses,
    record(snrDb, buffers) {
      const scale = level * 10 ** (-snrDb / 20);
      const samples = new Float32Array(heard.length);
      for (let n = 0; n < samples.length; n++) {
        samples[n] = gain * (heard[n] ?? 0) + scale * (noise[n] ?? 0);
      }
      clipRecording(samples, 1);
      return buffers ? damageRecording(samples, buffers) : samples;
    },
  };
}

const knownEvents = new WeakMap<Schedule, readonly ScheduledEvent[]>();

/** What a schedule plays, rendered once for all rooms that hear it. */
function eventsOf(schedule: Schedule): readonly ScheduledEvent[] {
  const events = knownEvents.get(schedule) ?? scheduleEvents(schedule);
  knownEvents.set(schedule, events);
  return events;
}

/** Rms of the marks at the microphone. */
function markRms(mix: Float64Array, { mark, markStarts }: Schedule): number {
  let power = 0;
  for (const start of markStarts) {
    for (let n = start; n < start + 2 * mark.lengthSamples; n++) power += (mix[n] ?? 0) ** 2;
  }
  return Math.sqrt(power / (markStarts.length * mark.lengthSamples));
}
