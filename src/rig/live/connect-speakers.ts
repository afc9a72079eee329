import {
  AudioBuffer,
  AudioBufferSourceNode,
  ChannelMergerNode,
  GainNode,
} from 'standardized-audio-context';
import { renderChannel } from '../../take/render';
import type { Schedule } from '../../take/schedule';
import type { Output } from './open-output';
import type { OutputRoute } from './route-outputs';

/** The stimulus, ready on every output. */
export interface Speakers {
  /** Starts all of them together at this frame of the context and lets the gain rise. */
  start(frame: number, gain: number): void;
  silence(): void;
}

const rampSeconds = 0.05;

/** Renders the schedule, which must have the context's rate, and wires each channel to its output. */
export function connectSpeakers(output: Output, schedule: Schedule, route: OutputRoute): Speakers {
  const { context, channels } = output;
  const merger = new ChannelMergerNode(context, { numberOfInputs: channels });
  const volume = new GainNode(context, {
    gain: 0,
    channelCount: channels,
    channelCountMode: 'explicit',
    channelInterpretation: 'discrete',
  });
  merger.connect(volume).connect(context.destination);
  const { lengthSamples: length, sampleRate } = schedule;
  const players = schedule.channels.map((channel) => {
    const buffer = new AudioBuffer({ length, sampleRate, numberOfChannels: 1 });
    buffer.copyToChannel(renderChannel(schedule, channel), 0);
    const player = new AudioBufferSourceNode(context, { buffer });
    player.connect(merger, 0, route.get(channel) ?? 0);
    return player;
  });
  return {
    start(frame, gain) {
      volume.gain.setValueAtTime(0, context.currentTime);
      volume.gain.linearRampToValueAtTime(gain, context.currentTime + rampSeconds);
      for (const player of players) player.start(frame / sampleRate);
    },
    silence: () => volume.disconnect(),
  };
}
