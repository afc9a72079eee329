import { describe, expect, it } from 'vitest';
import { periodicPink } from '../../../dsp/signal/pink';
import { expectClose } from '../../close';
import { fakeRig } from '../soundlevel/fake-rig';
import { runOn } from './run-on';

/** What a processor plays: pink noise of a period unlike any of the analysis. */
const pink = periodicPink({
  lowHz: 15,
  highHz: 22_000,
  periodSamples: 2 ** 17,
  sampleRate: 48_000,
  seed: 77,
});
const rms = Math.sqrt(pink.reduce((sum, x) => sum + x * x, 0) / pink.length);

/** Noise from `from` to `to` seconds at an rms of −30 dB. */
function playing(from: number, to = Infinity): (seconds: number) => number {
  const gain = 10 ** (-30 / 20) / rms;
  return (seconds) => {
    if (seconds < from || seconds > to) return 0;
    return gain * (pink[Math.round(seconds * 48_000) % pink.length] ?? 0);
  };
}

describe('listening', () => {
  it('asks for silence, then for the noise, and reads level and a flat shape without arrival', async () => {
    const rig = fakeRig({ noiseDb: -70, extra: playing(4) });
    const { states, last } = await runOn(rig, { kind: 'listening' }, ({ complete }) => complete);
    const said = states.map(({ warnings }) => warnings.join());
    expect(said.some((words) => words.includes('silence first'))).toBe(true);
    expect(said.some((words) => words.includes('start the processor’s noise on FL'))).toBe(true);
    expect(last?.warnings).toEqual([]);
    const reading = last?.reading;
    // 500 to 2000 Hz is two octaves of the log2(22000/15) that the power is spread over.
    const so = -30 + 10 * Math.log10(2 / Math.log2(22_000 / 15));
    expectClose(reading?.levelDb, so, 0.1);
    for (const [n, hz] of (reading?.response?.hz ?? []).entries()) {
      if (hz > 100 && hz < 16_000) expectClose(reading?.response?.db[n], 0, 1.5);
    }
    expect(reading).toMatchObject({ kind: 'listening', rolloff: null });
    expect(reading?.notes.join()).toMatch(/without arrival/);
    expect(rig.played).toBeNull();
  });

  it('knows the noise floor from the silence before, within half a decibel', async () => {
    const rig = fakeRig({ noiseDb: -60, extra: playing(6) });
    const { last } = await runOn(rig, { kind: 'listening' }, ({ complete }) => complete);
    const { hz, noiseDb, coherence } = last?.spectrum ?? { hz: [], noiseDb: [], coherence: [] };
    for (const [n, f] of hz.entries()) {
      const floor = -60 + 10 * Math.log10((f * 0.2308) / 24_000);
      if (f > 500 && f < 18_000) expectClose(noiseDb[n], floor, 0.5, `at ${f} Hz`);
    }
    expect(coherence.every((value) => value === null)).toBe(true);
  });

  it('does not take a room that stays quiet for noise, and says what may be wrong', async () => {
    const rig = fakeRig({ noiseDb: -60 });
    const { last } = await runOn(rig, { kind: 'listening' }, () => rig.seconds > 26);
    expect(last?.reading).toBeNull();
    expect(last?.warnings.join()).toMatch(/No noise has risen yet/);
  });

  it('waits when the noise stops, and keeps what it has', async () => {
    const rig = fakeRig({ noiseDb: -70, extra: playing(4, 9) });
    const { last } = await runOn(
      rig,
      { kind: 'listening', averagingSeconds: 30 },
      () => rig.seconds > 14,
    );
    expect(last?.warnings.join()).toMatch(/The noise has stopped/);
    expect(last?.seconds).toBeLessThan(6);
    const so = -30 + 10 * Math.log10(2 / Math.log2(22_000 / 15));
    expectClose(last?.reading?.levelDb, so, 0.3);
  });
});
