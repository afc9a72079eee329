import { describe, expect, it } from 'vitest';
import { convolve } from '../../../dsp/fft/convolve';
import { finePower } from '../../../dsp/noise/fine-power';
import { createPeriodAnalyser } from '../../../dsp/noise/period-analyser';
import { deconvolveSweep } from '../../../dsp/response/deconvolve';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { logGrid, smoothPower } from '../../../dsp/response/smoothing';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { drawRoom } from '../../../dsp/room/draw-room';
import { drawSpeaker, placeSpeaker } from '../../../dsp/room/draw-speaker';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { periodicPink } from '../../../dsp/signal/pink';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { expectClose } from '../../close';
import { hearing, inBlocks } from './heard-period';

const sampleRate = 48_000;
const size = 2 ** 16;
const grid = logGrid(30, 16_000, 24);
const room = drawRoom(11);
const microphone = { x: 0.55 * room.size.x, y: 0.6 * room.size.y, z: 1.1 };
const model = drawSpeaker(5, { f3Hz: [35, 40] });
const speaker = placeSpeaker(
  model,
  { x: 0.25 * room.size.x, y: 0.15 * room.size.y, z: 1 },
  microphone,
);
const response = impulseResponseAt(room, speaker, microphone, sampleRate, 1.3);
const period = periodicPink({
  lowHz: 20,
  highHz: 20_000,
  periodSamples: size,
  sampleRate,
  seed: 1,
});
const hear = hearing(period, response);

const sweep = synchronisedSweep(10, 20_000, 2 ** 17, sampleRate);
const pre = Math.round(0.17 * sampleRate);

function bySweep(noise: number) {
  const clean = convolve(sweepSignal(sweep), response);
  const normal = gaussian(seededRandom(21));
  const captured = Float64Array.from({ length: pre + clean.length }, (_, n) => {
    return (clean[n - pre] ?? 0) + noise * normal();
  });
  const lengthSamples = pre + Math.round(1.36 * sampleRate);
  return deconvolveSweep(captured, pre, sweep, { preSamples: pre, lengthSamples });
}

function byNoise(noise: number, periods: number) {
  const analyser = createPeriodAnalyser(period, sampleRate);
  const frames = Math.ceil((periods + 1.1) * size + 0.5 * sampleRate);
  inBlocks(hear(frames, { ppm: 100, noise }), (block) => analyser.push(block), 4096);
  const reading = analyser.read();
  if (!reading) throw new Error('no reading');
  return reading;
}

function levels(power: Float64Array): number[] {
  return Array.from(power, (value) => 10 * Math.log10(value));
}

const swept = levels(smoothPower(powerSpectrum(bySweep(0)), grid, 24));

describe('periodic noise in a simulated room', () => {
  it('gives the response of a sweep within 0.05 dB from 30 Hz to 16 kHz, at 100 ppm', () => {
    const reading = byNoise(0, 3);
    expectClose(levels(smoothPower(finePower(reading).heard, grid, 24)), swept, 0.05);
  });

  it('gives it within 0.2 dB in noise 40 dB down', () => {
    const heard = hear(size);
    const rms = Math.sqrt(heard.reduce((sum, v) => sum + v * v, 0) / size);
    const reading = byNoise(rms / 100, 16);
    expectClose(levels(smoothPower(finePower(reading).heard, grid, 24)), swept, 0.2);
  });

  it('gives the bands that a roll-off is fitted to as a sweep does, and marks what it does not know', () => {
    const reading = byNoise(0, 3);
    const bands = rolloffBands(reading.transfer, reading.noise);
    const so = rolloffBands(bySweep(0), null);
    for (const [k, hz] of bands.hz.entries()) {
      if (hz < 19) expect(bands.marginDb[k]).toBeLessThan(6);
      if (hz < 24) continue;
      const difference = 10 * Math.log10((bands.power[k] ?? 0) / (so.power[k] ?? 0));
      expectClose(difference, 0, 0.3, `at ${hz.toFixed(1)} Hz`);
    }
  });
});
