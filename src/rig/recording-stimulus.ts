import { seededRandom } from '../../dsp/signal/random';
import { channelMask } from '../system/channel-mask';
import { scheduleEvents, type ScheduledEvent } from '../take/render';
import type { Schedule } from '../take/schedule';
import type { WavDepth, WavSpec } from '../wav/wav-file';
import { wavPieces, type FrameSource } from '../wav/write-wav';

/** One file of a saved take; its pieces, joined, are its content. */
export interface TakeFile {
  readonly name: string;
  readonly pieces: Iterable<Uint8Array<ArrayBuffer>>;
}

/**
 * The take as files: take.wav with one channel a speaker, made as it is asked for, and take.json,
 * the schedule that must come back with the capture. 16 bits are dithered, with one seed for all.
 */
export function takeFiles(schedule: Schedule, depth: WavDepth = 24): TakeFile[] {
  return [
    { name: 'take.wav', pieces: takeWav(schedule, depth) },
    { name: 'take.json', pieces: [new TextEncoder().encode(takeJson(schedule))] },
  ];
}

/** The WAV that a schedule is saved as. */
export function takeWavSpec(schedule: Schedule, depth: WavDepth): WavSpec {
  return {
    channelCount: schedule.channels.length,
    frames: schedule.lengthSamples,
    sampleRate: schedule.sampleRate,
    depth,
    channelMask: channelMask(schedule.channels),
  };
}

/** The text of take.json. */
export function takeJson(schedule: Schedule): string {
  return `${JSON.stringify(schedule, null, 2)}\n`;
}

function* takeWav(schedule: Schedule, depth: WavDepth): Generator<Uint8Array<ArrayBuffer>> {
  const dither = depth === 16 ? seededRandom(1) : undefined;
  yield* wavPieces(takeWavSpec(schedule, depth), eventSource(schedule), dither);
}

/** Frames straight from the take's events: only what sounds is in memory. */
function eventSource(schedule: Schedule): FrameSource {
  const events = scheduleEvents(schedule);
  const byChannel = schedule.channels.map((label) =>
    events.filter((event) => event.channel === label),
  );
  return (channel, start, into) => {
    for (const event of byChannel[channel] ?? []) place(event, start, into);
  };
}

function place({ startSample, samples }: ScheduledEvent, start: number, into: Float32Array): void {
  const from = Math.max(start, startSample);
  const to = Math.min(start + into.length, startSample + samples.length);
  if (from < to) into.set(samples.subarray(from - startSample, to - startSample), from - start);
}
