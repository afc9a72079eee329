import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { trouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { fakeRig } from '../soundlevel/fake-rig';
import { runOn } from './run-on';

/** White noise that never comes again, unlike the rig's own. */
function hiss(db: number): () => number {
  const normal = gaussian(seededRandom(31));
  return () => 10 ** (db / 20) * normal();
}

describe('runNoise', () => {
  it('averages with time left and ends with the level, flat response and its noise', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -60 });
    const { end, states, last } = await runOn(rig, {}, ({ complete }) => complete);
    expect(end?.trouble).toBe('stopped');
    expect(rig.isOpen).toBe(false);
    for (let n = 1; n < states.length; n++) {
      expect(states[n]?.seconds).toBeGreaterThanOrEqual(states[n - 1]?.seconds ?? 0);
    }
    expect(states.filter(({ seconds }) => seconds === 0).at(-1)?.reading).toBeNull();
    expect(last).toMatchObject({ seconds: 8, secondsLeft: 0, warnings: [] });
    const reading = last?.reading;
    expect(reading).toMatchObject({
      id: 'reading 0',
      positionId: 'seat',
      channel: 'FL',
      lowHz: 20,
    });
    // The path's gain, whatever the gain of the noise.
    expectClose(reading?.levelDb, -6, 0.01);
    for (const [n, hz] of (reading?.response?.hz ?? []).entries()) {
      if (hz > 25 && hz < 16_000) expectClose(reading?.response?.db[n], 0, 0.3);
    }
    expect(reading?.response?.hz[0]).toBeGreaterThanOrEqual(19);
    expect(reading?.rolloff).not.toBeNull();
  });

  it('shows band levels of pink noise as flat, over the noise floor, with coherence', async () => {
    const rig = fakeRig({ gainDb: 0, noiseDb: -150, extra: hiss(-50) });
    const { last } = await runOn(rig, {}, ({ complete }) => complete);
    const { hz, db, noiseDb, coherence } = last?.spectrum ?? {
      hz: [],
      db: [],
      noiseDb: [],
      coherence: [],
    };
    expect(hz.length).toBeGreaterThan(25);
    for (const [n, f] of hz.entries()) {
      if (f > 16_000) continue;
      expectClose(db[n], db[10] ?? 0, 0.15, `at ${f} Hz`);
      // White noise of −50 dB over 24 kHz, in a third of an octave.
      const floor = -50 + 10 * Math.log10((f * 0.2308) / 24_000);
      if (f > 200) expectClose(noiseDb[n], floor, 0.8);
      const ratio = 10 ** ((floor - (db[n] ?? 0)) / 10);
      if (f > 200) expectClose(coherence[n], 1 - ratio, 0.2 * ratio);
    }
  });

  it('tells about eight times a second, with the sound level and what to count as exposure', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -60 });
    let seconds = 0;
    const { states, last } = await runOn(rig, { averagingSeconds: 4 }, ({ complete }) => complete, {
      soundLevel: { offsetDb: 110, how: 'calibrator', at: '', microphone: '' },
      onLevel: (db, during) => {
        seconds += during;
        expect(Number.isFinite(db)).toBe(true);
      },
    });
    expect(states.length / seconds).toBeGreaterThan(4);
    expect(states.length / seconds).toBeLessThan(13);
    // All that was averaged counts, and nothing that was never played.
    expect(seconds).toBeGreaterThanOrEqual(4);
    expect(seconds).toBeLessThanOrEqual(rig.seconds);
    expect(last?.soundLevel?.calibrated).toBe(true);
    expect(last?.spectrum?.unit).toBe('dB SPL');
  });

  it('follows a change of speaker with a new average, and one of resolution with the same', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -60 });
    const ids = new Set<string>();
    let asked = 0;
    const { last } = await runOn(rig, {}, (state, run) => {
      const { request, reading, spectrum } = state;
      if (reading && request.channel === 'FL') ids.add(reading.id);
      if (asked === 0 && reading) {
        asked = 1;
        setImmediate(() => run?.change({ ...request, bandsPerOctave: 12 }));
      } else if (asked === 1 && (spectrum?.hz.length ?? 0) > 100) {
        asked = 2;
        setImmediate(() => {
          run?.change({ ...request, channel: 'FR' });
          expect(run?.reading()).toBeNull();
        });
      }
      return reading?.channel === 'FR';
    });
    expect([...ids]).toEqual(['reading 0']);
    expect(rig.played?.channel).toBe('FR');
    expect(last?.reading).toMatchObject({ id: 'reading 1', channel: 'FR' });
  });

  it('keeps the shape when the level is turned down, and reads the same path', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -80 });
    let before = 0;
    let turned = false;
    const { last } = await runOn(rig, { averagingSeconds: 60 }, (state, run) => {
      if (!turned && state.seconds > 8) {
        turned = true;
        before = state.bandLevelDb ?? 0;
        run?.change({ ...state.request, gainDb: -30 });
      }
      return turned && state.seconds > 14;
    });
    expect(rig.gains.at(-1)?.gainDb).toBe(-30);
    expectClose((last?.bandLevelDb ?? 0) - before, -10, 0.05);
    expectClose(last?.reading?.levelDb, -6, 0.02);
    expect(last?.warnings).toEqual([]);
  });

  it('says so when audio was lost, and reads on', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -70, lost: { atSeconds: 6, frames: 500 } });
    const { last } = await runOn(rig, { averagingSeconds: 12 }, ({ complete }) => complete);
    expect(last?.warnings.join()).toMatch(/Audio was lost once/);
    expectClose(last?.reading?.levelDb, -6, 0.02);
  });

  it('leaves a bang out and says so', async () => {
    const extra = (seconds: number): number =>
      seconds > 7 && seconds < 7.1 ? 0.4 * Math.sin(seconds * 2 * Math.PI * 700) : 0;
    const rig = fakeRig({ gainDb: -6, noiseDb: -70, extra });
    const { last } = await runOn(rig, { averagingSeconds: 12 }, ({ complete }) => complete);
    expect(last?.warnings.join()).toMatch(/Something else was heard once/);
    expectClose(last?.reading?.levelDb, -6, 0.02);
  });

  it('says when a speaker stays silent, and gives no level', async () => {
    const rig = fakeRig({ gainDb: -Infinity, noiseDb: -150, extra: hiss(-60) });
    const { last } = await runOn(rig, {}, ({ complete }) => complete);
    expect(last?.warnings.join()).toMatch(/Nothing of the noise is heard from FL/);
    expect(last?.reading?.levelDb).toBeNull();
    expect(last?.reading?.notes.join()).toMatch(/No level/);
  });

  it('says when the microphone clips', async () => {
    const process = (x: number): number => Math.min(Math.max(20 * x, -1), 1);
    const rig = fakeRig({ gainDb: 0, noiseDb: -60, process });
    const { last } = await runOn(rig, {}, (state) => state.reading !== null);
    expect(last?.warnings.join()).toMatch(/clips/);
  });

  it('takes the microphone’s response out', async () => {
    const calibration = { name: 'x', hz: [20, 1000, 20_000], db: [3, 3, 3], phaseDegrees: null };
    const rig = fakeRig({ gainDb: -6, noiseDb: -60 });
    const { last } = await runOn(rig, {}, ({ complete }) => complete, { calibration });
    expectClose(last?.reading?.levelDb, -9, 0.02);
  });

  it('reads level and response, but no roll-off, from a narrow band', async () => {
    const rig = fakeRig({ gainDb: -6, noiseDb: -60 });
    const { last } = await runOn(rig, { lowHz: 500, highHz: 2000 }, ({ complete }) => complete);
    const reading = last?.reading;
    expectClose(reading?.levelDb, -6, 0.01);
    expect(reading?.rolloff).toBeNull();
    expect(reading?.notes.join()).toMatch(/No roll-off: it needs noise from/);
    for (const db of reading?.response?.db ?? [99]) expectClose(db, 0, 0.1);
    expect(reading?.response?.hz.at(-1)).toBeLessThan(2001);
  });

  it('refuses a band that makes no sense, at the start and while it runs', async () => {
    const bad = await runOn(fakeRig({}), { lowHz: 100, highHz: 90 }, () => false);
    expect(bad.end).toMatchObject({ trouble: 'bad-number' });
    let tried = false;
    const { last } = await runOn(fakeRig({}), {}, (state, run) => {
      if (!tried && run) {
        tried = true;
        run.change({ ...state.request, lowHz: 100, highHz: 90 });
      }
      return tried && state.warnings.length > 0;
    });
    expect(last?.warnings[0]).toMatch(/lower limit must lie below/);
    expect(last?.request.lowHz).toBe(20);
  });

  it('ends with the line’s own trouble, or with why it could not open', async () => {
    const gone = await runOn(fakeRig({ endAtSeconds: 2 }), {}, () => false);
    expect(gone.end).toMatchObject({ trouble: 'device-gone' });
    const refuse = trouble('no-permission', 'Not allowed.');
    const closed = await runOn(fakeRig({ refuse }), {}, () => false);
    expect(closed.end).toEqual(refuse);
    const slow = await runOn(fakeRig({ sampleRate: 16_000 }), {}, () => false);
    expect(slow.end).toMatchObject({ trouble: 'wrong-rate' });
  });
});
