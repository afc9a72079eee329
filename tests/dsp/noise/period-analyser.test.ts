import { describe, expect, it } from 'vitest';
import { realSpectrum } from '../../../dsp/fft/fft';
import { createPeriodAnalyser, type PeriodAnalyser } from '../../../dsp/noise/period-analyser';
import type { PeriodReading } from '../../../dsp/noise/period-reading';
import { periodicPink } from '../../../dsp/signal/pink';
import { expectClose } from '../../close';
import { hearing, inBlocks, invented, type Hearing } from './heard-period';

const size = 2 ** 14;
const sampleRate = 48_000;
const hzPerBin = sampleRate / size;
const period = periodicPink({
  lowHz: 20,
  highHz: 20_000,
  periodSamples: size,
  sampleRate,
  seed: 1,
});
const response = invented(size);
const hear = hearing(period, response);
const warmUpSamples = size + 1000;

function lengthFor(periods: number): number {
  return Math.ceil(warmUpSamples + (periods + 0.1) * size);
}

function analyserFor(mostPeriods = Infinity): PeriodAnalyser {
  return createPeriodAnalyser(period, sampleRate, { warmUpSamples, mostPeriods });
}

function analyse(periods: number, how: Hearing): PeriodReading {
  const analyser = analyserFor();
  inBlocks(hear(lengthFor(periods), how), (block) => analyser.push(block));
  const reading = analyser.read();
  if (!reading) throw new Error('no reading');
  return reading;
}

const truth = realSpectrum(response, size);
const truePower = (k: number): number => (truth[2 * k] ?? 0) ** 2 + (truth[2 * k + 1] ?? 0) ** 2;

/** Largest difference from the truth in 1/24 octaves from 30 Hz to 16 kHz, dB. */
function worstError(reading: PeriodReading): number {
  let worst = 0;
  for (let hz = 30; hz < 16_000; hz *= 2 ** (1 / 24)) {
    let heard = 0;
    let so = 0;
    for (let k = Math.floor(hz / hzPerBin); k <= (hz * 2 ** (1 / 24)) / hzPerBin; k++) {
      heard += reading.power.power[k] ?? 0;
      so += truePower(k);
    }
    worst = Math.max(worst, Math.abs(10 * Math.log10(heard / so)));
  }
  return worst;
}

function sum(power: Float64Array, lowHz: number, highHz: number): number {
  return power
    .subarray(Math.ceil(lowHz / hzPerBin), Math.floor(highHz / hzPerBin) + 1)
    .reduce((total, one) => total + one, 0);
}

describe('createPeriodAnalyser', () => {
  it('has nothing to tell before two whole periods were heard after the warm-up', () => {
    const analyser = analyserFor();
    const capture = hear(lengthFor(3));
    analyser.push(capture.subarray(0, warmUpSamples + 1.5 * size));
    expect(analyser.read()).toBeNull();
    analyser.push(capture.subarray(warmUpSamples + 1.5 * size));
    expect(analyser.read()?.periods).toBeGreaterThan(1.9);
  });

  it.each([0, 7, 100, -100, 300, -300])(
    'reads the response at %d ppm between the clocks',
    (ppm) => {
      const reading = analyse(6, { ppm });
      expect(worstError(reading)).toBeLessThan(0.005);
      expectClose(reading.driftPpm, ppm, 0.01);
      expect(reading.dropped).toBe(0);
    },
  );

  it('finds the drift to a tenth of a ppm in noise 40 dB down, after ten periods', () => {
    expectClose(analyse(10, { ppm: 83, noise: 0.01 }).driftPpm, 83, 0.1);
  });

  it('reads the same wherever in a period and with whatever blocks it begins', () => {
    const levels = [0, 11.7, 5000.2, 16_000].map((start) => {
      const analyser = analyserFor();
      const block = 64 + Math.round(start / 3);
      inBlocks(hear(lengthFor(3), { start }), (samples) => analyser.push(samples), block);
      return analyser.read()?.bandLevelDb ?? Number.NaN;
    });
    // Methods: whole periods have a standard deviation of 0.006 dB at most.
    for (const level of levels) expectClose(level, levels[0] ?? 0, 0.001);
  });

  it('turns the response so that its largest sample stands at zeroIndex', () => {
    const { transfer } = analyse(3, { ppm: 20 });
    expect(transfer.samples.length).toBe(size);
    const shape = Array.from({ length: 200 }, (_, n) => transfer.samples[transfer.zeroIndex + n]);
    const so = Array.from({ length: 200 }, (_, n) => response[40 + n]);
    // Outside 20 Hz to 20 kHz nothing is known, and the start falls between samples.
    expectClose(shape, so, 0.25);
    expectClose(shape[0], 1, 0.25);
  });

  it('tells noise power and coherence of a known signal-to-noise ratio', () => {
    const noise = 0.05;
    const reading = analyse(20, { ppm: 30, noise });
    for (const [low, high] of [
      [100, 400],
      [400, 2000],
      [2000, 16_000],
    ] as const) {
      const bins = Math.floor(high / hzPerBin) - Math.ceil(low / hzPerBin) + 1;
      // White noise: variance · 2/size a bin.
      const so = noise ** 2 * (2 / size) * bins;
      expectClose(10 * Math.log10(sum(reading.hiss.power, low, high) / so), 0, 0.5);
      const heard = realSpectrum(period, size);
      let signal = 0;
      for (let k = Math.ceil(low / hzPerBin); k <= Math.floor(high / hzPerBin); k++) {
        const x = (heard[2 * k] ?? 0) ** 2 + (heard[2 * k + 1] ?? 0) ** 2;
        signal += (2 * x * truePower(k)) / size ** 2;
      }
      expectClose(10 * Math.log10(sum(reading.heard.power, low, high) / signal), 0, 0.05);
      let coherence = 0;
      let expected = 0;
      for (let k = Math.ceil(low / hzPerBin); k <= Math.floor(high / hzPerBin); k++) {
        const x = (heard[2 * k] ?? 0) ** 2 + (heard[2 * k + 1] ?? 0) ** 2;
        const s = (2 * x * truePower(k)) / size ** 2;
        expected += s / (s + noise ** 2 * (2 / size)) / bins;
        coherence += (reading.coherence[k] ?? 0) / bins;
      }
      expectClose(coherence, expected, 0.01);
    }
  });

  it('has as much noise left in the response as it says', () => {
    const reading = analyse(12, { noise: 0.05 });
    const clean = analyse(12, {});
    let error = 0;
    let said = 0;
    const [a, b] = [reading, clean].map(({ transfer }) => realSpectrum(transfer.samples, size));
    for (let k = Math.ceil(200 / hzPerBin); k < 10_000 / hzPerBin; k++) {
      // Magnitudes differ by the half of the noise that lies along the signal.
      const one = Math.hypot(a?.[2 * k] ?? 0, a?.[2 * k + 1] ?? 0);
      const two = Math.hypot(b?.[2 * k] ?? 0, b?.[2 * k + 1] ?? 0);
      error += 2 * (one - two) ** 2;
      said += reading.noisePower.power[k] ?? 0;
    }
    expectClose(10 * Math.log10(error / said), 0, 0.7);
  });

  it('loses nothing but a period when 500 frames go missing untold', () => {
    const jump = { at: warmUpSamples + 6.4 * size, frames: 500 };
    const reading = analyse(12, { ppm: -40, noise: 0.003, jump });
    expect(reading).toMatchObject({ lost: 1, disturbed: 0 });
    expect(reading.periods).toBeGreaterThan(9.9);
    expect(worstError(reading)).toBeLessThan(0.2);
    expectClose(reading.driftPpm, -40, 0.2);
  });

  it('finds repeated frames as it finds lost ones, also among the first periods', () => {
    const jump = { at: warmUpSamples + 1.7 * size, frames: -480 };
    const reading = analyse(9, { ppm: 15, noise: 0.003, jump });
    expect(reading.lost).toBe(1);
    expect(worstError(reading)).toBeLessThan(0.2);
  });

  it('goes on after a gap it is told of', () => {
    const analyser = analyserFor();
    const capture = hear(lengthFor(10), { ppm: 60, noise: 0.003 });
    inBlocks(capture, (block, from) => {
      if (from === 2048 * 52) analyser.gap(block.length);
      else analyser.push(block);
    });
    const reading = analyser.read();
    if (!reading) throw new Error('no reading');
    expect(reading).toMatchObject({ lost: 1, disturbed: 0 });
    expect(reading.periods).toBeGreaterThan(7.9);
    expect(worstError(reading)).toBeLessThan(0.2);
  });

  it.each([0.3, 2.3, 8.3])('leaves out a bang that falls in period %d', (place) => {
    const bang = { at: warmUpSamples + Math.round(place * size), length: 3000, peak: 0.5 };
    const reading = analyse(12, { ppm: 25, noise: 0.003, bang });
    expect(reading).toMatchObject({ lost: 0, disturbed: 1 });
    expect(worstError(reading)).toBeLessThan(0.2);
  });

  it('keeps the shape when the gain falls, in the same noise, and reads the new level', () => {
    const analyser = analyserFor();
    inBlocks(hear(lengthFor(7), { noise: 0.001 }), (block) => analyser.push(block));
    const before = analyser.read();
    analyser.setGain(-12);
    // The speaker had compressed: 11 dB less is heard for 12 dB less.
    const start = 1234.4 + lengthFor(7);
    const gain = 10 ** (-11 / 20);
    inBlocks(hear(lengthFor(5), { noise: 0.001, gain, start, seed: 4 }), (block) => {
      analyser.push(block);
    });
    const after = analyser.read();
    if (!before || !after) throw new Error('no reading');
    expect(after).toMatchObject({ lost: 0, disturbed: 0 });
    expect(analyser.progress()).toMatchObject({ renewed: 0 });
    expect(after.periods).toBeGreaterThan(before.periods + 3.9);
    expect(worstError(after)).toBeLessThan(0.2);
    expectClose(after.levelShiftDb, 1, 0.01);
    expectClose(after.bandLevelDb - before.bandLevelDb, -11, 0.01);
    const hiss = sum(after.hiss.power, 500, 16_000) / sum(before.hiss.power, 500, 16_000);
    expectClose(10 * Math.log10(hiss), 0, 0.5);
  });

  it('begins anew when the gain rises much', () => {
    const analyser = analyserFor();
    inBlocks(hear(lengthFor(7), { noise: 0.001 }), (block) => analyser.push(block));
    const before = analyser.read()?.bandLevelDb ?? Number.NaN;
    analyser.setGain(12);
    const start = 1234.4 + lengthFor(7);
    inBlocks(hear(lengthFor(3), { gain: 10 ** (12 / 20), start }), (block) => analyser.push(block));
    const reading = analyser.read();
    expect(reading?.periods).toBeGreaterThan(1.9);
    expect(reading?.periods).toBeLessThan(3.1);
    expectClose((reading?.bandLevelDb ?? 0) - before, 12, 0.001);
  });

  it('begins anew by itself when what is heard has changed for good', () => {
    const analyser = analyserFor();
    inBlocks(hear(lengthFor(7), { noise: 0.001 }), (block) => analyser.push(block));
    const start = 1234.4 + lengthFor(7);
    const louder = hear(lengthFor(12), { noise: 0.001, gain: 1.5, start, seed: 4 });
    inBlocks(louder, (block) => analyser.push(block));
    expect(analyser.progress().renewed).toBe(1);
    const level = analyser.read()?.bandLevelDb ?? Number.NaN;
    expectClose(level - analyse(3, {}).bandLevelDb, 20 * Math.log10(1.5), 0.01);
  });

  it('says nothing is heard when nothing but noise is', () => {
    const reading = analyse(8, { gain: 0, noise: 0.1 });
    const total = sum(reading.heard.power, 100, 10_000) + sum(reading.hiss.power, 100, 10_000);
    expect(sum(reading.heard.power, 100, 10_000) / total).toBeLessThan(0.15);
    for (const value of reading.transfer.samples) expect(Number.isFinite(value)).toBe(true);
  });

  it('gives numbers for digital silence and for samples that are none', () => {
    const analyser = analyserFor();
    analyser.push(new Float32Array(lengthFor(4)).fill(Number.NaN));
    const reading = analyser.read();
    expect(reading?.bandLevelDb).toBeLessThan(-250);
    expect(reading?.power.power.every((value) => value === 0)).toBe(true);
  });

  it('refuses periods that are silent or too short, and impossible gaps', () => {
    expect(() => createPeriodAnalyser(new Float64Array(2048), sampleRate)).toThrow(RangeError);
    expect(() => createPeriodAnalyser(period.slice(0, 512), sampleRate)).toThrow(RangeError);
    expect(() => analyserFor().gap(-1)).toThrow(RangeError);
    expect(() => analyserFor().setGain(Number.NaN)).toThrow(RangeError);
  });
});
