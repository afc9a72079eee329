import { recordPeriodic } from '../../dsp/room/periodic';
import { noiseSource } from '../../dsp/room/room-noise';
import type { ChannelLabel } from '../system/channel';
import type { CapturedBlock } from './port';
import { practiceRate } from './practice-clock';
import type { HeardSound } from './practice-hear';
import { loopbackGain } from './practice-loopback';
import type { PracticeFaults, PracticeSystem } from './practice-system';

/** A line into a simulated room, frame by frame; knows no time. */
export interface LineSimulation {
  play(sound: HeardSound | null): void;
  setGain(gainDb: number): void;
  /** What the microphone hears in the next frames. */
  next(frames: number): CapturedBlock;
  /** Frames that nobody hears. */
  skip(frames: number): void;
}

/** A sound that repeats at the microphone, and how loud it is to be from which frame on. */
interface Voice {
  readonly heard: Float64Array;
  readonly dry: Float64Array;
  readonly channel: ChannelLabel;
  readonly startFrame: number;
  gain: number;
  step: number;
  target: number;
  /** Fades out, then goes. */
  ended: boolean;
  changes: { readonly atFrame: number; readonly target: number }[];
}

const rampFrames = Math.round(0.05 * practiceRate);

/**
 * The steady state of periods in a simulated room, on the microphone's own clock and with its
 * latency: fades, gains and noise as on a live line, the tail of what ended left out.
 */
export function lineSimulation(
  system: PracticeSystem,
  { faults = {}, loopback = false }: LineWishes = {},
): LineSimulation {
  const { noise, sensitivityDb, seed } = system;
  const ratio = 1 + system.skewPpm * 1e-6;
  const latency = Math.round(system.latencySeconds * practiceRate);
  const limit = faults.clipLevel ?? 1;
  const hiss = noiseSource(practiceRate, seed + 0.875, noise);
  let voices: Voice[] = [];
  let frame = 0;

  const fade = (voice: Voice, gain: number): void => {
    voice.changes.push({ atFrame: frame + latency, target: gain });
  };

  return {
    play(sound) {
      for (const voice of voices) {
        if (!voice.ended) fade(voice, 0);
        voice.ended = true;
      }
      if (!sound) return;
      const voice: Voice = {
        heard: sound.heard,
        dry: Float64Array.from(sound.period),
        channel: sound.channel,
        startFrame: frame + latency,
        gain: 0,
        step: 0,
        target: 0,
        ended: false,
        changes: [],
      };
      fade(voice, 10 ** (sound.gainDb / 20));
      voices.push(voice);
    },
    setGain(gainDb) {
      const last = voices.at(-1);
      if (last && !last.ended) fade(last, 10 ** (gainDb / 20));
    },
    next(frames) {
      const samples = new Float32Array(frames);
      const wire = loopback ? new Float32Array(frames) : null;
      const [reference] = system.speakers;
      const sensitivity = 10 ** (sensitivityDb / 20);
      for (const voice of voices) {
        const from = frame - voice.startFrame;
        const heard = recordPeriodic(voice.heard, ratio, from, frames);
        const onWire = wire !== null && voice.channel === reference?.channel;
        const dry = onWire ? recordPeriodic(voice.dry, ratio, from, frames) : null;
        for (let n = 0; n < frames; n++) {
          const gain = nextGain(voice, frame + n);
          samples[n] = (samples[n] ?? 0) + gain * sensitivity * (heard[n] ?? 0);
          if (wire && dry) wire[n] = (wire[n] ?? 0) + gain * loopbackGain * (dry[n] ?? 0);
        }
      }
      for (let n = 0; n < frames; n++) {
        samples[n] = Math.max(-limit, Math.min(limit, (samples[n] ?? 0) + hiss()));
      }
      const block = { frame, samples, loopback: wire };
      frame += frames;
      voices = voices.filter(
        ({ ended, gain, target, changes }) => !ended || gain + target + changes.length > 0,
      );
      return block;
    },
    skip(frames) {
      frame += frames;
    },
  };
}

/** What a line is opened with besides its room. */
export interface LineWishes {
  readonly faults?: PracticeFaults;
  readonly loopback?: boolean;
}

/** Moves a voice's gain along its ramp. */
function nextGain(voice: Voice, frame: number): number {
  while ((voice.changes[0]?.atFrame ?? Infinity) <= frame) {
    voice.target = voice.changes.shift()?.target ?? 0;
    voice.step = (voice.target - voice.gain) / rampFrames;
  }
  const moved = voice.gain + voice.step;
  const past = voice.step > 0 ? moved >= voice.target : moved <= voice.target;
  voice.gain = past ? voice.target : moved;
  return voice.gain;
}
