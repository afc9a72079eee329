import { describe, expect, it } from 'vitest';
import { createSoundLevelMeter } from '../../../src/soundlevel/sound-level-meter';
import { expectClose } from '../../close';

const rate = 48_000;
const calibration = {
  offsetDb: 120,
  how: 'calibrator',
  at: '2026-01-01T00:00:00Z',
  microphone: 'invented',
} as const;

function tone(hz: number, seconds: number, amplitude = 0.1): Float32Array {
  return Float32Array.from({ length: rate * seconds }, (_, n) => {
    return amplitude * Math.sin((2 * Math.PI * hz * n) / rate);
  });
}

describe('createSoundLevelMeter', () => {
  it('shows nothing until something is heard', () => {
    const meter = createSoundLevelMeter(rate, null);
    expect(meter.read()).toBeNull();
    meter.push(new Float32Array(0));
    expect(meter.read()).toBeNull();
    expect(meter.aWeightedDb()).toBe(-300);
  });

  it('starts with A and slow, in dB re full scale', () => {
    const meter = createSoundLevelMeter(rate, null);
    meter.push(tone(1000, 12));
    expect(meter.read()).toMatchObject({ weighting: 'A', time: 'slow', calibrated: false });
    expectClose(meter.read()?.db, -20 - 3.0103, 0.02);
  });

  it('reads a calibrated tone of 94 dB as 94 dB with every weighting', () => {
    const meter = createSoundLevelMeter(rate, { ...calibration, offsetDb: 94 + 23.0103 });
    meter.push(tone(1000, 12));
    for (const weighting of ['A', 'C', 'Z'] as const) {
      for (const time of ['fast', 'slow'] as const) {
        meter.set(weighting, time);
        expect(meter.read()).toMatchObject({ weighting, time, calibrated: true });
        expectClose(meter.read()?.db, 94, 0.03, `${weighting} ${time}`);
      }
    }
  });

  it('falls faster with fast than with slow', () => {
    const meter = createSoundLevelMeter(rate, null);
    meter.push(tone(1000, 10));
    meter.push(new Float32Array(rate));
    expectClose(meter.read()?.db, -23.01 - 4.34, 0.1);
    meter.set('A', 'fast');
    expectClose(meter.read()?.db, -23.01 - 34.74, 0.1);
  });

  it('tells the mean A level since last asked', () => {
    const meter = createSoundLevelMeter(rate, calibration);
    meter.push(tone(1000, 2));
    meter.push(new Float32Array(2 * rate));
    expectClose(meter.aWeightedDb(), -26.02, 0.05, 'half of the time silent: 3 dB less');
    meter.push(tone(1000, 2));
    expectClose(meter.aWeightedDb(), -23.01, 0.05);
  });

  it('outlives samples that are no numbers', () => {
    const meter = createSoundLevelMeter(rate, null);
    meter.push([Number.NaN, Infinity]);
    meter.push(tone(1000, 10));
    expectClose(meter.read()?.db, -23.01, 0.05);
  });
});
