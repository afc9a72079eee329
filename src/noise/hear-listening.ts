import { msg, str } from '@lit/localize';
import { powerToDb } from '../../dsp/level/decibels';
import { createRunningSpectrum } from '../../dsp/noise/running-spectrum';
import { integratePower, type PowerSpectrum } from '../../dsp/response/power-spectrum';
import { createRiseDetector } from './detect-rise';
import type { NoiseEar } from './noise-ear';
import type { NoiseSetting } from './noise-orders';
import type { NoiseRequest } from './noise-state';
import { periodLength } from './period-length';
import { readListening } from './read-listening';
import { showSpectrum } from './show-spectrum';
import { createClipWatch } from './watch-clipping';

const silenceSeconds = 2;
/** Sound that is held back, so that the rise of the noise is not taken for silence. */
const heldSeconds = 1;
/** Left out at the start of the noise: its rise and the room filling. */
const settleSeconds = 0.5;
/** Silence averaged at most, stretches. */
const mostSilence = 16;
/** Waiting longer than this says what may be wrong. */
const patienceSeconds = 20;

/** Hears noise that the processor plays: silence first, then what rises over it. */
export function hearListening(first: NoiseRequest, setting: NoiseSetting): NoiseEar {
  const { sampleRate } = setting;
  const size = periodLength(sampleRate);
  const hop = size / 2 / sampleRate;
  let request = first;
  const detector = createRiseDetector(first.lowHz, first.highHz, sampleRate, silenceSeconds);
  const floor = createRunningSpectrum(size, sampleRate, mostSilence);
  const heard = createRunningSpectrum(size, sampleRate, mostStretches(first, hop));
  const running = createRunningSpectrum(size / 4, sampleRate, 4);
  const clip = createClipWatch();
  let held: Float32Array[] = [];
  let heldSamples = 0;
  let waited = 0;
  let settling = 0;
  let quietFloor: PowerSpectrum | null = null;
  let gaps = 0;

  const hold = (samples: Float32Array): void => {
    held.push(samples);
    heldSamples += samples.length;
    const keep = detector.phase === 'silence' ? 0 : heldSeconds * sampleRate;
    for (let oldest = held[0]; oldest && heldSamples > keep; oldest = held[0]) {
      if (heldSamples - oldest.length < keep) break;
      floor.push(oldest);
      held.shift();
      heldSamples -= oldest.length;
    }
  };
  const average = (samples: Float32Array): void => {
    quietFloor ??= floor.read();
    held = [];
    heldSamples = 0;
    if (settling < settleSeconds * sampleRate) settling += samples.length;
    else heard.push(samples);
  };
  const numbers = () => {
    const now = heard.read();
    if (!now) return null;
    const seconds = Math.min((heard.count + 1) * hop, request.averagingSeconds);
    return { ...readListening(now, quietFloor, request, setting), seconds, rolloff: null };
  };
  const warnings = (): string[] => {
    const said: string[] = [];
    const { phase } = detector;
    if (phase === 'silence')
      said.push(msg('Listening to the silence first: keep the processor’s noise off.'));
    if (phase === 'waiting') {
      said.push(msg(str`Now start the processor’s noise on ${request.channel}.`));
      if (waited > patienceSeconds * sampleRate) {
        said.push(
          msg(
            'No noise has risen yet. If it was on from the start, turn it off, listen again, then turn it on.',
          ),
        );
      }
    }
    if (phase === 'fallen') said.push(msg('The noise has stopped; the average waits for it.'));
    if (clip.clipped)
      said.push(msg('The microphone clips. Turn its gain or the noise down, then listen again.'));
    if (gaps > 0) said.push(msg('Audio was lost; the average goes on without it.'));
    return said;
  };
  return {
    push(samples) {
      clip.push(samples);
      const before = detector.phase;
      detector.push(samples);
      running.push(samples);
      const { phase } = detector;
      if (phase === 'waiting') waited += samples.length;
      if (phase === 'risen') average(samples);
      else if (phase !== 'fallen') hold(samples);
      if (before !== phase) heard.gap();
    },
    gap() {
      gaps++;
      detector.gap();
      floor.gap();
      heard.gap();
      running.gap();
    },
    setGain: () => undefined,
    show(next) {
      request = next;
      heard.setMost(mostStretches(next, hop));
    },
    news() {
      const whole = heard.read() ?? running.read();
      const hiss = quietFloor ?? (detector.phase === 'silence' ? null : floor.read());
      const most = mostStretches(request, hop);
      const complete = heard.count >= most;
      const seconds =
        heard.count === 0 ? 0 : Math.min((heard.count + 1) * hop, request.averagingSeconds);
      return {
        seconds: complete ? request.averagingSeconds : seconds,
        secondsLeft: complete ? 0 : Math.max(request.averagingSeconds - seconds, 0),
        complete,
        spectrum: whole && showSpectrum({ whole, hiss, coherent: false }, request, setting),
        bandLevelDb: whole && bandDb(whole, request),
        numbers: numbers(),
        warnings: warnings(),
      };
    },
  };
}

function mostStretches({ averagingSeconds }: NoiseRequest, hopSeconds: number): number {
  return Math.max(2, Math.ceil(averagingSeconds / hopSeconds - 1));
}

function bandDb(spectrum: PowerSpectrum, { lowHz, highHz }: NoiseRequest): number {
  const integral = integratePower(spectrum);
  return powerToDb(Math.max(integral(highHz) - integral(lowHz), 0) / spectrum.hzPerBin);
}
