import { describe, expect, it } from 'vitest';
import { layoutFromName } from '../../../src/system/layout';
import { renderChannel, scheduleEvents } from '../../../src/take/render';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';

const layout = layoutFromName('3.1');
if (isTrouble(layout)) throw new Error(layout.sentence);
const schedule = scheduleTake(layout, { sweepSeconds: 1, peakDb: -12 });
const peak = 10 ** (-12 / 20);

describe('renderChannel', () => {
  it.each(schedule.channels)(
    'puts the sweep of %s on its own channel and nowhere else',
    (label) => {
      const pcm = renderChannel(schedule, label);
      expect(pcm.length).toBe(schedule.lengthSamples);
      for (const { channel, sweepStart, sweep } of schedule.segments) {
        const stretch = pcm.subarray(sweepStart, sweepStart + sweep.lengthSamples);
        const loudest = stretch.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
        expectClose(loudest, channel === label ? peak : 0, 0.001);
      }
    },
  );

  it('plays the sweep sample for sample: sin(2π f1 L (e^(t/L) − 1)) between its fades', () => {
    // Farina, AES 108 (2000), written out here.
    const [segment] = schedule.segments;
    if (!segment) throw new Error('no segment');
    const { startHz, endHz, lengthSamples, fadeInSamples, fadeOutSamples } = segment.sweep;
    const rate = lengthSamples / 48000 / Math.log(endHz / startHz);
    const pcm = renderChannel(schedule, 'FL');
    for (let n = fadeInSamples; n < lengthSamples - fadeOutSamples; n += 997) {
      const phase = 2 * Math.PI * startHz * rate * (Math.exp(n / 48000 / rate) - 1);
      expectClose(pcm[segment.sweepStart + n], peak * Math.sin(phase), 1e-6);
    }
  });

  it('plays the marks on the reference speaker only, one before each sweep and one at the end', () => {
    const heard = (label: (typeof schedule.channels)[number]): number[] =>
      schedule.markStarts.map((start) =>
        renderChannel(schedule, label)
          .subarray(start, start + schedule.mark.lengthSamples)
          .reduce((most, value) => Math.max(most, Math.abs(value)), 0),
      );
    expect(Math.min(...heard('FL'))).toBeGreaterThan(0.9 * peak);
    expect(heard('FR')).toEqual(schedule.markStarts.map(() => 0));
    expect(schedule.markStarts.length).toBe(schedule.segments.length + 1);
  });

  it('is silent where the schedule says so', () => {
    for (const label of schedule.channels) {
      const pcm = renderChannel(schedule, label);
      const { start, length } = schedule.silence;
      expect(pcm.subarray(start, start + length).every((value) => value === 0)).toBe(true);
    }
  });

  it('wakes every channel with quiet noise, different on each', () => {
    const passages = schedule.channels.map((label) =>
      renderChannel(schedule, label).subarray(
        schedule.wake.start,
        schedule.wake.start + schedule.wake.length,
      ),
    );
    for (const passage of passages) {
      const rms = Math.sqrt(
        passage.reduce((sum, value) => sum + value * value, 0) / passage.length,
      );
      expectClose(20 * Math.log10(rms), schedule.wake.levelDb, 1, 'faded at both ends');
    }
    expect(passages[0]?.subarray(5000, 5010)).not.toEqual(passages[1]?.subarray(5000, 5010));
  });

  it('is the sum of the events of its channel', () => {
    const pcm = renderChannel(schedule, 'FC');
    const sum = new Float32Array(schedule.lengthSamples);
    for (const { channel, startSample, samples } of scheduleEvents(schedule)) {
      if (channel !== 'FC') continue;
      samples.forEach((value, n) => (sum[startSample + n] = (sum[startSample + n] ?? 0) + value));
    }
    expect(pcm.every((value, n) => value === sum[n])).toBe(true);
  });
});
