import {
  AudioBuffer,
  AudioBufferSourceNode,
  ChannelMergerNode,
  GainNode,
} from 'standardized-audio-context';
import { dbToAmplitude } from '../../../dsp/level/decibels';
import type { LineSound } from '../port';
import type { Output } from './open-output';

/** Plays one sound at a time on one output, end to end, with soft edges. */
export interface LinePlayer {
  /** Fades out what plays and this in, on output `index`; null is silence. */
  play(sound: LineSound | null, index: number): void;
  setGain(gainDb: number): void;
  /** Silence now. */
  close(): void;
}

const fadeSeconds = 0.05;

export function createLinePlayer({ context, channels }: Output): LinePlayer {
  const merger = new ChannelMergerNode(context, { numberOfInputs: channels });
  const all = new GainNode(context, {
    channelCount: channels,
    channelCountMode: 'explicit',
    channelInterpretation: 'discrete',
  });
  merger.connect(all).connect(context.destination);
  // The first node of a kind costs its library 20 ms of trying the browser out; not while it sounds.
  new AudioBufferSourceNode(context, {
    buffer: new AudioBuffer({ length: 1, sampleRate: context.sampleRate }),
  });
  let playing: { gain: ReturnType<typeof gainNode>; stop: () => void } | null = null;

  const fade = (gain: ReturnType<typeof gainNode>, to: number): void => {
    const now = context.currentTime;
    gain.gain.cancelScheduledValues(now);
    gain.gain.setValueAtTime(gain.gain.value, now);
    gain.gain.linearRampToValueAtTime(to, now + fadeSeconds);
  };
  function gainNode() {
    return new GainNode(context, { gain: 0 });
  }

  return {
    play(sound, index) {
      if (playing) {
        fade(playing.gain, 0);
        playing.stop();
        playing = null;
      }
      if (!sound) return;
      const length = sound.period.length;
      const buffer = new AudioBuffer({ length, sampleRate: context.sampleRate });
      buffer.copyToChannel(new Float32Array(sound.period), 0);
      const source = new AudioBufferSourceNode(context, { buffer, loop: true });
      const gain = gainNode();
      source.connect(gain).connect(merger, 0, index);
      source.start();
      fade(gain, dbToAmplitude(Math.min(0, sound.gainDb)));
      playing = {
        gain,
        stop() {
          source.stop(context.currentTime + 2 * fadeSeconds);
          source.onended = () => gain.disconnect();
        },
      };
    },
    setGain(gainDb) {
      if (playing) fade(playing.gain, dbToAmplitude(Math.min(0, gainDb)));
    },
    close: () => all.disconnect(),
  };
}
