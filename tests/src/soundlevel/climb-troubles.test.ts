import { describe, expect, it } from 'vitest';
import { sweepSignal, synchronisedSweep } from '../../../dsp/signal/sweep';
import { trouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { calibration, climb, resultOf } from './climb-on';

describe('climbLevel, where the world is not kind', () => {
  it('does not take hum or a passing truck for the speaker', async () => {
    const truck = (seconds: number): number =>
      seconds > 8 ? 0.03 * Math.sin(5000 * Math.sin(237 * seconds * seconds)) : 0;
    const { end } = resultOf(await climb({ gainDb: -Infinity, extra: truck }));
    expect(end).toBe('unheard');
  });

  it('keeps the peaks of a hot microphone below −12 dB re full scale', async () => {
    const { end, sentence } = resultOf(await climb({ gainDb: 40, noiseDb: -30 }));
    expect(end).toBe('clipping');
    expect(sentence).toMatch(/peaks reach −1[2-4]\.\d dB/);
  });

  it('comes down at once when the microphone clips', async () => {
    const climbed = await climb({ gainDb: 50, noiseDb: -30 }, {}, { startDb: -30 });
    const { end, gainDb } = resultOf(climbed);
    expect(end).toBe('clipping');
    // Noise of −15 dB rms with peaks near −4 dB, 50 dB on the way: −12 dB is reached near −58.
    expect(gainDb).toBeLessThan(-54);
    expect(climbed.rig.gains[1]?.gainDb).toBeLessThanOrEqual(-42);
    expect(
      (climbed.rig.gains[1]?.seconds ?? 99) - (climbed.rig.gains[0]?.seconds ?? 0),
    ).toBeLessThan(1);
  });

  it('goes on after a single bang', async () => {
    const bang = (seconds: number): number => (Math.abs(seconds - 9) < 0.01 ? 3 : 0);
    const { end } = resultOf(await climb({ gainDb: -15, noiseDb: -75, extra: bang }));
    expect(end).toBe('margin');
  });

  it('does not take a door that slams in the silence for the noise floor', async () => {
    const slam = (s: number): number =>
      s > 2.6 && s < 2.9 ? 0.3 * Math.exp(-(s - 2.6) * 30) * Math.sin(6000 * s) : 0;
    const quiet = resultOf(await climb({ gainDb: -15, noiseDb: -75 }));
    const slammed = resultOf(await climb({ gainDb: -15, noiseDb: -75, extra: slam }));
    expectClose(slammed.gainDb, quiet.gainDb, 0.6);
  });

  it('refuses a microphone that clips by itself', async () => {
    const { outcome } = await climb({ extra: (seconds) => 3 * Math.sin(2000 * seconds) });
    expect(outcome).toMatchObject({ trouble: 'too-loud' });
  });

  it('never passes 95 dB(C)', async () => {
    const climbed = await climb(
      { gainDb: 0, noiseDb: -45 },
      { marginDb: 60 },
      { soundLevel: { ...calibration, offsetDb: 130 } },
    );
    const { end, sentence } = resultOf(climbed);
    expect(end).toBe('too loud');
    expect(sentence).toMatch(/95 dB\(C\)/);
    const loudest = Math.max(...climbed.states.map((state) => state.soundLevel?.db ?? 0));
    expect(loudest).toBeLessThan(95.1);
    expect(loudest).toBeGreaterThan(94);
  });

  it('comes down when the first step is already too loud', async () => {
    const climbed = await climb(
      { gainDb: 0, noiseDb: -70 },
      { marginDb: 90, targetDb: 120 },
      { soundLevel: { ...calibration, offsetDb: 130 }, startDb: -10 },
    );
    const { end, gainDb } = resultOf(climbed);
    expect(end).toBe('too loud');
    expect(gainDb).toBeLessThan(-19);
  });

  it('stops when gain control hides the steps', async () => {
    let energy = 0;
    const control = (x: number): number => {
      energy += (x * x - energy) / 20_000;
      return x * Math.min(30, (0.01 / Math.sqrt(energy + 1e-9)) ** 0.7);
    };
    const { outcome, rig } = await climb({ gainDb: -10, noiseDb: -75, process: control });
    expect(outcome).toMatchObject({ trouble: 'not-linear' });
    expect(Math.max(...rig.gains.map(({ gainDb }) => gainDb))).toBeLessThan(-30);
  });

  it('stops before the cap when gain control brings all to one level', async () => {
    let energy = 0;
    const control = (x: number): number => {
      energy += (x * x - energy) / 5000;
      return (0.05 * x) / Math.sqrt(energy + 1e-12);
    };
    const { outcome, rig } = await climb({ gainDb: -10, noiseDb: -75, process: control });
    expect(outcome).toMatchObject({ trouble: 'not-linear' });
    expect(Math.max(...rig.gains.map(({ gainDb }) => gainDb))).toBeLessThan(-30);
  });

  it('takes hum in the silence for no gain control', async () => {
    const hum = (s: number): number => 0.001 * Math.sin(2 * Math.PI * 50 * s);
    const chain = { gainDb: -20, noiseDb: -60, extra: hum };
    const { end } = resultOf(await climb(chain, { marginDb: 10 }, { isSub: true }));
    expect(end).toBe('margin');
  });

  it('finds a compressor in the last step by the linearity check', async () => {
    const compress = (x: number): number => Math.sign(x) * Math.abs(x) ** 0.9;
    const { linearity, sentence } = resultOf(
      await climb({ gainDb: -10, noiseDb: -80, process: compress }),
    );
    expect(linearity?.passes).toBe(false);
    expectClose(linearity?.stepDb, 5.4, 0.1);
    expect(sentence).toMatch(/came back as 5\.[345] dB less.*Switch off/);
  });

  it('passes the linearity check while somebody speaks', async () => {
    const voice = (s: number): number =>
      s > 17 ? 0.0015 * Math.sin(700 * s * (1 + 0.3 * Math.sin(9 * s))) : 0;
    const { linearity } = resultOf(await climb({ gainDb: -15, noiseDb: -70, extra: voice }));
    expect(linearity?.passes).toBe(true);
  });

  it('cannot tell linearity with a thin margin, and says so', async () => {
    const { linearity, sentence } = resultOf(
      await climb({ gainDb: -20, noiseDb: -60 }, { marginDb: 10 }),
    );
    expect(linearity).toBeNull();
    expect(sentence).toMatch(/too thin to tell/);
  });

  it.each([-300, 300])('hears a speaker whose clock is off by %d ppm', async (skewPpm) => {
    const { end, linearity } = resultOf(await climb({ gainDb: -15, noiseDb: -75, skewPpm }));
    expect(end).toBe('margin');
    expect(linearity?.passes).toBe(true);
  });

  it('leaves room for a sweep that meets a resonance', async () => {
    const resonance = (): ((x: number) => number) => {
      const radius = 0.9995;
      const turn = 2 * radius * Math.cos((2 * Math.PI * 120) / 48_000);
      let [y1, y2] = [0, 0];
      return (x) => {
        const y = turn * y1 - radius * radius * y2 + 3e-5 * x;
        [y1, y2] = [y, y1];
        return y + 0.03 * x;
      };
    };
    // The floor is filtered as well, which leaves a low one.
    const { gainDb } = resultOf(
      await climb({ gainDb: 40, noiseDb: -30, process: resonance() }, { marginDb: 60 }),
    );
    const hear = resonance();
    let peak = 0;
    for (const x of sweepSignal(synchronisedSweep(10, 20_000, 2 ** 17, 48_000))) {
      peak = Math.max(peak, Math.abs(hear(100 * x * 10 ** ((gainDb - 12) / 20))));
    }
    expectClose(20 * Math.log10(peak), -12, 3, 'a sweep crosses it faster than it swings in');
    expect(20 * Math.log10(peak)).toBeLessThan(-11);
  });

  it('ends when audio is lost all the time', async () => {
    const { outcome } = await climb({ lost: { atSeconds: 6, frames: 480, everySeconds: 0.4 } });
    expect(outcome).toMatchObject({ trouble: 'failed' });
  });

  it.each([5, 9, 20])('outlives audio that is lost after %d s', async (atSeconds) => {
    const lost = { atSeconds, frames: 480 };
    const { end, linearity } = resultOf(await climb({ gainDb: -15, noiseDb: -70, lost }));
    expect(end).toBe('margin');
    expect(linearity?.passes).toBe(true);
  });

  it('gives the trouble of a line that ends or does not open', async () => {
    const gone = await climb({ endAtSeconds: 6 });
    expect(gone.outcome).toMatchObject({ trouble: 'device-gone' });
    const refuse = trouble('no-microphone', 'There is no microphone.');
    expect((await climb({ refuse })).outcome).toEqual(refuse);
  });

  it('stops at once when aborted, and closes the line', async () => {
    const stop = new AbortController();
    const climbed = await climb(
      { gainDb: -15 },
      {},
      {
        signal: stop.signal,
        onState: ({ gainDb }) => {
          if (gainDb > -55) stop.abort();
        },
      },
    );
    expect(climbed.outcome).toMatchObject({ trouble: 'stopped' });
    expect(climbed.rig.isOpen).toBe(false);
    expect(climbed.rig.gains.at(-1)?.gainDb).toBe(-54);
  });
});
