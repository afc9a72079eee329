import {
  AudioBuffer,
  AudioBufferSourceNode,
  ChannelMergerNode,
  GainNode,
  OfflineAudioContext,
} from 'standardized-audio-context';
import { describe, expect, it } from 'vitest';

const rate = 48000;

/** Eight different signals, one a merger input, through a discrete gain, as the live rig plays. */
async function playEight(startSeconds: number) {
  const context = new OfflineAudioContext({ length: rate, numberOfChannels: 8, sampleRate: rate });
  const merger = new ChannelMergerNode(context, { numberOfInputs: 8 });
  const volume = new GainNode(context, {
    channelCount: 8,
    channelCountMode: 'explicit',
    channelInterpretation: 'discrete',
  });
  merger.connect(volume).connect(context.destination);
  const signals = Array.from({ length: 8 }, (_, channel) =>
    Float32Array.from({ length: 1000 }, (_, n) => Math.sin((channel + 1) * (n + 1) * 0.01)),
  );
  for (const [channel, signal] of signals.entries()) {
    const buffer = new AudioBuffer({
      length: signal.length,
      sampleRate: rate,
      numberOfChannels: 1,
    });
    buffer.copyToChannel(signal, 0);
    const player = new AudioBufferSourceNode(context, { buffer });
    player.connect(merger, 0, channel);
    player.start(startSeconds);
  }
  return { signals, rendered: await context.startRendering() };
}

describe('the browser’s audio graph', () => {
  it('keeps eight channels apart, bit for bit', async () => {
    const { signals, rendered } = await playEight(0);
    for (const [channel, signal] of signals.entries()) {
      const heard = rendered.getChannelData(channel);
      expect(heard.slice(0, signal.length)).toEqual(signal);
    }
  });

  it('starts at a quarter of a second exactly on its frame, without interpolating', async () => {
    const { signals, rendered } = await playEight(0.25);
    const heard = rendered.getChannelData(3);
    expect(heard.slice(0, 12000).every((value) => value === 0)).toBe(true);
    expect(heard.slice(12000, 13000)).toEqual(signals[3]);
  });
});
