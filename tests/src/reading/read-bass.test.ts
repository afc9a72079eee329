import { describe, expect, it } from 'vitest';
import { bassGrid } from '../../../dsp/bass/transfer';
import { filterResponse } from '../../../dsp/filter/analogue';
import { moveBass, readBass } from '../../../src/reading/read-bass';
import type { BassReading } from '../../../src/reading/reading';
import { filterOf } from '../../../src/reading/take-out-filter';
import { untouched } from '../../../src/reading/take-out-settings';
import { expectClose } from '../../close';

const hz = bassGrid();

/** A pulse of one sample, `delay` samples after zero delay. */
function pulse(delay: number) {
  const samples = new Float64Array(48000);
  samples[1000 + delay] = 1;
  return { samples, sampleRate: 48000, zeroIndex: 1000 };
}

/** gain · e^(−2πif·seconds). */
function pure(seconds: number, gain = 1): BassReading {
  const turn = (f: number): number => -2 * Math.PI * f * seconds;
  return {
    re: Array.from(hz, (f) => gain * Math.cos(turn(f))),
    im: Array.from(hz, (f) => gain * Math.sin(turn(f))),
  };
}

describe('the bass of a channel', () => {
  it('has its time zero where the reference arrives', () => {
    // 480 samples after zero delay, the reference after 240: 5 ms.
    expectClose(readBass(pulse(480), 0.005, untouched), pure(0.005), 1e-3);
  });

  it('is without the delay and the trim in force', () => {
    const inForce = { ...untouched, delay: { seconds: 0.003, halfSeconds: 0 }, trimDb: -6 };
    expectClose(readBass(pulse(480), 0.005, inForce), pure(0.002, 10 ** 0.3), 2e-3);
  });

  it('is without a low-pass in force on a sub, phase and all, as far as it can be divided', () => {
    const spec = filterOf({ family: 'Butterworth', order: 2 }, 'low-pass', 120);
    const filter = { spec, bassOnSubs: null };
    const bass = readBass(pulse(240), 0.005, { ...untouched, filter });
    const k = hz.findIndex((f) => f >= 60);
    const gone = filterResponse(spec, hz[k] ?? 0);
    const [re, im] = [bass?.re[k] ?? 0, bass?.im[k] ?? 0];
    expectClose(
      { re: re * gone.re - im * gone.im, im: re * gone.im + im * gone.re },
      { re: 1, im: 0 },
      1e-3,
    );
  });

  it('is not told where the subs played it, or the delay is not known', () => {
    const spec = filterOf({ family: 'Butterworth', order: 2 }, 'high-pass', 80);
    const bassOnSubs = filterOf({ family: 'Linkwitz-Riley', order: 4 }, 'low-pass', 80);
    const filter = { spec, bassOnSubs };
    expect(readBass(pulse(240), 0, { ...untouched, filter })).toBeNull();
    expect(readBass(pulse(240), 0, { ...untouched, delay: null })).toBeNull();
  });

  it('keeps a session small', () => {
    const text = JSON.stringify(readBass(pulse(333), 0.001, untouched));
    expect(text.length).toBeLessThan(6000);
  });
});

it('moves later and louder', () => {
  expectClose(moveBass(pure(0.001), 6, 0.002), pure(0.003, 10 ** 0.3), 2e-3);
});
