import { clipRecording, damageRecording } from '../../dsp/room/faults';
import { roomNoise } from '../../dsp/room/room-noise';
import { recordPart } from '../../dsp/room/second-clock';
import type { ChannelLabel } from '../system/channel';
import { scheduleEvents } from '../take/render';
import type { Schedule, ScheduledSegment } from '../take/schedule';
import type { MicLevel } from './port';
import { practiceRate, recorderClock } from './practice-clock';
import { convolver } from './practice-convolver';
import { disturbCapture } from './practice-disturbances';
import { practiceDrive } from './practice-drive';
import { channelResponse } from './practice-response';
import { dynamicsGain, processedResponses, type PracticeProcessor } from './practice-processor';
import type { PracticeFaults, PracticeSystem } from './practice-system';

export interface RenderOptions {
  /** Gain of the stimulus, dB, at most 0. */
  readonly gainDb?: number;
  readonly faults?: PracticeFaults;
  /** What the take goes through on its way to the speakers; null or left out: nothing. */
  readonly processor?: PracticeProcessor | null;
  /** Called after each step with the position reached on the stimulus clock; false ends the work. */
  readonly onStep?: (position: number) => Promise<boolean>;
  readonly onLevel?: (level: MicLevel) => void;
}

/** Seconds the recorder runs on after the take. */
export const afterSeconds = 0.4;

/**
 * What the microphone of a simulated system records of a take, 48 kHz; null when onStep said no.
 * The same system and schedule give the same samples.
 */
export async function renderCapture(
  system: PracticeSystem,
  schedule: Schedule,
  options: RenderOptions = {},
): Promise<Float32Array | null> {
  const mix = await renderMix(system, schedule, options);
  return mix && (await recordMix(mix, system, schedule, options));
}

/** Sound pressure at the microphone on the stimulus clock, 1 at 1 m; null when onStep said no. */
export async function renderMix(
  system: PracticeSystem,
  schedule: Schedule,
  options: RenderOptions = {},
): Promise<Float64Array | null> {
  const { onStep, processor, faults = {} } = options;
  const mix = new Float64Array(schedule.lengthSamples);
  const processed = processor && processedResponses(system, processor, faults, schedule.sampleRate);
  const firsts = new Map<ChannelLabel, ScheduledSegment>();
  for (const segment of schedule.segments) {
    if (!firsts.has(segment.channel)) firsts.set(segment.channel, segment);
  }
  for (const [channel, segment] of firsts) {
    if (onStep && !(await onStep(segment.markStart))) return null;
    if (processor && processed)
      addProcessed(mix, processed(channel), schedule, channel, processor, options);
    else addChannel(mix, system, schedule, channel, options);
    tellLevel(mix, segment, system, options);
  }
  return mix;
}

/** What the recorder makes of that pressure; null when onStep said no. */
export async function recordMix(
  mix: Float64Array,
  system: PracticeSystem,
  schedule: Schedule,
  options: RenderOptions = {},
): Promise<Float32Array | null> {
  const heard = await resampleMix(mix, system, schedule, options);
  return heard && finishCapture(heard, system, options, schedule);
}

/** What a speaker adds: what its processor replays louder, it plays louder. */
function addChannel(
  mix: Float64Array,
  system: PracticeSystem,
  schedule: Schedule,
  channel: ChannelLabel,
  { gainDb = 0, faults = {} }: RenderOptions,
): void {
  const replayGainDb = schedule.segments.find((one) => one.channel === channel)?.replayGainDb ?? 0;
  const gain = 10 ** (replayGainDb / 20);
  const response = channelResponse(system, channel, faults, schedule.sampleRate);
  if (!response) return;
  const through = convolver(response.map((value) => gain * value));
  const loudness = gain * 10 ** (gainDb / 20);
  const driven = practiceDrive(system, channel, faults, schedule.sampleRate, loudness);
  for (const event of scheduleEvents(schedule, channel)) {
    through.add(mix, event.startSample, driven(event));
  }
}

/** What a channel adds through the processor, which knows how loud LFE is; cones play cleanly. */
function addProcessed(
  mix: Float64Array,
  response: Float64Array | null,
  schedule: Schedule,
  channel: ChannelLabel,
  processor: PracticeProcessor,
  { gainDb = 0 }: RenderOptions,
): void {
  if (!response) return;
  const through = convolver(response);
  const turned = new Map<Float32Array, Float32Array>();
  for (const { startSample, samples } of scheduleEvents(schedule, channel)) {
    const gain = dynamicsGain(processor, gainDb + peakDbOf(samples));
    const played = turned.get(samples) ?? samples.map((value) => gain * value);
    turned.set(samples, played);
    through.add(mix, startSample, played);
  }
}

function peakDbOf(samples: Float32Array): number {
  let peak = 1e-9;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  return 20 * Math.log10(peak);
}

/** The pressure on the recorder's clock, computed a second at a time; null when onStep said no. */
export async function resampleMix(
  mix: Float64Array,
  system: PracticeSystem,
  schedule: Schedule,
  { onStep }: RenderOptions = {},
): Promise<Float64Array | null> {
  const { ratio, latency } = recorderClock(system, schedule);
  const length = Math.ceil(mix.length * ratio + latency + afterSeconds * practiceRate);
  const heard = new Float64Array(length);
  const last = schedule.markStarts.at(-1) ?? 0;
  if (onStep && !(await onStep(last))) return null;
  for (let from = 0; from < length; from += practiceRate) {
    const to = Math.min(from + practiceRate, length);
    recordPart(mix, ratio, latency, heard, from, to);
    const position = last + ((schedule.lengthSamples - last) * to) / length;
    if (onStep && !(await onStep(Math.floor(position)))) return null;
  }
  return heard;
}

/**
 * Brings that to full scale, adds the noise and whatever is broken on purpose; without a schedule
 * nothing that happens in a speaker's sweep.
 */
export function finishCapture(
  heard: Float64Array,
  system: PracticeSystem,
  { gainDb = 0, faults }: RenderOptions = {},
  schedule?: Schedule,
): Float32Array {
  const capture = roomNoise(heard.length, practiceRate, system.seed + 0.875, system.noise);
  const gain = 10 ** ((gainDb + system.sensitivityDb) / 20);
  for (let n = 0; n < capture.length; n++) capture[n] = (capture[n] ?? 0) + gain * (heard[n] ?? 0);
  if (schedule && faults) disturbCapture(capture, system, schedule, faults);
  const samples = new Float32Array(capture);
  clipRecording(samples, faults?.clipLevel ?? 1);
  return faults?.buffers ? damageRecording(samples, faults.buffers) : samples;
}

/** Level of the segment's sweep at the microphone, as the strip shows it. */
function tellLevel(
  mix: Float64Array,
  segment: ScheduledSegment,
  { sensitivityDb, noise }: PracticeSystem,
  { gainDb = 0, faults, onLevel }: RenderOptions,
): void {
  if (!onLevel) return;
  const gain = 10 ** ((gainDb + sensitivityDb) / 20);
  let power = 0;
  let peak = 0;
  for (let n = segment.sweepStart; n < segment.end; n++) {
    const value = gain * (mix[n] ?? 0);
    power += value * value;
    peak = Math.max(peak, Math.abs(value));
  }
  const limit = faults?.clipLevel ?? 1;
  const mean = power / (segment.end - segment.sweepStart) + noise.pink ** 2 + noise.hiss ** 2;
  onLevel({
    rmsDb: 10 * Math.log10(mean),
    peakDb: 20 * Math.log10(Math.min(peak + 3 * noise.pink, limit)),
    clipped: peak >= limit,
  });
}
