import { distortDrive, type ConeDistortion } from '../../dsp/room/cone-distortion';
import type { ChannelLabel } from '../system/channel';
import type { ScheduledEvent } from '../take/render';
import type { PracticeFaults, PracticeSystem } from './practice-system';

/**
 * What drives the air when a channel plays a scheduled sound: a sweep as its cone distorts it at
 * `gain`, re that gain; everything else as it is, being quiet or high. The same array again for the
 * same sound. Of several speakers wired to a channel the first one's cone counts.
 */
export function practiceDrive(
  { speakers }: PracticeSystem,
  channel: ChannelLabel,
  { wiring }: PracticeFaults,
  sampleRate: number,
  gain: number,
): (event: ScheduledEvent) => Float32Array {
  const label = wiring?.[channel]?.[0] ?? channel;
  const cone = speakers.find((one) => one.channel === label)?.speaker.cone;
  const known = new Map<Float32Array, Float32Array>();
  return ({ kind, samples }) => {
    if (!cone || kind !== 'sweep') return samples;
    const driven = known.get(samples) ?? driveAt(samples, sampleRate, cone, gain);
    known.set(samples, driven);
    return driven;
  };
}

function driveAt(
  samples: Float32Array,
  sampleRate: number,
  cone: ConeDistortion,
  gain: number,
): Float32Array {
  const drive = Float64Array.from(samples, (value) => gain * value);
  return Float32Array.from(distortDrive(drive, sampleRate, cone), (value) => value / gain);
}
