import { clipRecording, damageRecording } from '../../dsp/room/faults';
import { recordOnClock } from '../../dsp/room/second-clock';
import { noiseSource } from '../../dsp/room/room-noise';
import { renderChannel } from '../take/render';
import type { Schedule } from '../take/schedule';
import { afterSeconds, type RenderOptions } from './practice-capture';
import { practiceRate, recorderClock } from './practice-clock';
import type { PracticeSystem } from './practice-system';

/** How much of the reference's signal the loopback's input shows. */
export const loopbackGain = 0.5;

/**
 * What the recorder's second input hears of the wire to the reference speaker: the same latency
 * and clock as the microphone, no air in between.
 */
export function renderLoopback(
  system: PracticeSystem,
  schedule: Schedule,
  { gainDb = 0, faults }: RenderOptions = {},
): Float32Array {
  const { ratio, latency } = recorderClock(system, schedule);
  const length = Math.ceil(schedule.lengthSamples * ratio + latency + afterSeconds * practiceRate);
  const wire = renderChannel(schedule, schedule.reference);
  const gain = loopbackGain * 10 ** (gainDb / 20);
  const hiss = noiseSource(practiceRate, system.seed + 0.9375, { pink: 0, hiss: 10 ** (-96 / 20) });
  const samples = Float32Array.from(
    recordOnClock(wire, ratio, latency, length),
    (value) => gain * value + hiss(),
  );
  clipRecording(samples, 1);
  return faults?.buffers ? damageRecording(samples, faults.buffers) : samples;
}
