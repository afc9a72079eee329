import { createPeriodAnalyser } from '../../dsp/noise/period-analyser';
import type { PeriodReading } from '../../dsp/noise/period-reading';
import { createRunningSpectrum } from '../../dsp/noise/running-spectrum';
import type { RolloffReading } from '../reading/reading';
import type { NoiseEar } from './noise-ear';
import type { NoiseSetting, ReadNumbers } from './noise-orders';
import type { NoiseRequest, NoiseSpectrum } from './noise-state';
import { readNoise, readNoiseRolloff } from './read-noise';
import { renderPeriod } from './render-period';
import { showSpectrum } from './show-spectrum';
import { createClipWatch } from './watch-clipping';
import { periodWarnings } from './period-warnings';

/** After so many periods, and with every so many of these more, the roll-off is read again. */
const rolloffPeriods = [3, 6, 12, 24, 48];
const rolloffEvery = 24;
const settleSeconds = 0.5;
const runningSize = 2 ** 14;

/** Hears the noise this computer plays: compares whole periods with what was played. */
export function hearPeriods(first: NoiseRequest, setting: NoiseSetting): NoiseEar {
  const { sampleRate } = setting;
  let request = first;
  const period = renderPeriod(first.lowHz, first.highHz, sampleRate);
  const periodSeconds = period.length / sampleRate;
  const warmUpSamples = period.length + Math.round(settleSeconds * sampleRate);
  const analyser = createPeriodAnalyser(Float64Array.from(period), sampleRate, {
    mostPeriods: mostPeriods(first, periodSeconds),
    warmUpSamples,
  });
  analyser.setGain(first.gainDb);
  const running = createRunningSpectrum(runningSize, sampleRate, 4);
  const clip = createClipWatch();
  /** Samples since the last period was taken in. */
  let since = -warmUpSamples;
  let periods = 0;
  let taken = 0;
  let heardPeriods = 0;
  let renewed = 0;
  let reading: PeriodReading | null = null;
  let numbers: ReadNumbers | null = null;
  let spectrum: NoiseSpectrum | null = null;
  let shape: { rolloff: RolloffReading | null; notes: readonly string[] } | null = null;

  const readAgain = (): void => {
    reading = analyser.read();
    if (!reading) {
      numbers = null;
      shape = null;
      return;
    }
    heardPeriods++;
    const due = rolloffPeriods.includes(heardPeriods) || heardPeriods % rolloffEvery === 0;
    const done = reading.periods >= mostPeriods(request, periodSeconds) - 0.01;
    if (due || (done && shape === null) || heardPeriods === mostPeriods(request, periodSeconds)) {
      shape = readNoiseRolloff(reading, setting);
    }
    const read = readNoise(reading, setting);
    numbers = {
      ...read,
      seconds: Math.min(reading.periods, mostPeriods(request, periodSeconds)) * periodSeconds,
      rolloff: shape?.rolloff ?? null,
      notes: [...read.notes, ...(shape?.notes ?? [])],
    };
  };
  const draw = (): void => {
    if (reading) {
      const hiss = reading.hiss;
      const whole = {
        ...reading.heard,
        power: reading.heard.power.map((p, k) => p + (hiss.power[k] ?? 0)),
      };
      spectrum = showSpectrum({ whole, hiss, coherent: true }, request, setting);
    } else {
      const now = running.read();
      spectrum = now && showSpectrum({ whole: now, hiss: null, coherent: false }, request, setting);
    }
  };
  return {
    push(samples) {
      clip.push(samples);
      since += samples.length;
      if (!reading) running.push(samples);
      analyser.push(samples);
      const now = analyser.progress();
      if (now.taken === taken) return;
      if (now.renewed > renewed) {
        heardPeriods = 0;
        shape = null;
      }
      ({ periods, renewed, taken } = now);
      since = 0;
      readAgain();
      draw();
    },
    gap(frames) {
      running.gap();
      analyser.gap(frames);
    },
    setGain(gainDb) {
      request = { ...request, gainDb };
      clip.clear();
      running.clear();
      analyser.setGain(gainDb);
      since = -warmUpSamples;
    },
    show(next) {
      request = { ...next, gainDb: request.gainDb };
      analyser.setMost(mostPeriods(next, periodSeconds));
      draw();
    },
    news() {
      if (!reading) draw();
      const most = mostPeriods(request, periodSeconds);
      const done = Math.min(periods, most);
      const complete = done >= most - 0.01;
      const left = (most - done) * periodSeconds - since / sampleRate;
      return {
        seconds: Math.min(done * periodSeconds, request.averagingSeconds),
        secondsLeft: complete ? 0 : Math.max(left, 0),
        complete,
        spectrum,
        bandLevelDb: reading?.bandLevelDb ?? null,
        numbers,
        warnings: periodWarnings(analyser.progress(), reading, clip.clipped, request),
      };
    },
  };
}

function mostPeriods({ averagingSeconds }: NoiseRequest, periodSeconds: number): number {
  return Math.max(2, Math.ceil(averagingSeconds / periodSeconds - 1e-9));
}
