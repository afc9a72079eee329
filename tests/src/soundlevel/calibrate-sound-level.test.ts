import { describe, expect, it } from 'vitest';
import { calibrateSoundLevel } from '../../../src/soundlevel/calibrate-sound-level';
import type { SoundLevelCalibration } from '../../../src/microphone/calibration';
import { isTrouble, type Trouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { fakeRig, type Chain } from './fake-rig';

function calibrate(
  chain: Chain,
  db: number,
  how: SoundLevelCalibration['how'] = 'calibrator',
): Promise<SoundLevelCalibration | Trouble> {
  const { signal } = new AbortController();
  const at = '2026-01-01T00:00:00Z';
  return calibrateSoundLevel(fakeRig(chain), { db, how, microphone: 'invented', at, signal });
}

async function sentenceOf(chain: Chain, db = 94): Promise<string> {
  const outcome = await calibrate(chain, db);
  if (!isTrouble(outcome)) throw new Error(`calibrated with ${outcome.offsetDb} dB`);
  expect(outcome.trouble).toBe('bad-calibration');
  return outcome.sentence;
}

const tone =
  (hz: number, amplitude: number) =>
  (seconds: number): number =>
    amplitude * Math.sin(2 * Math.PI * hz * seconds);

describe('calibrateSoundLevel with a calibrator', () => {
  it.each([
    [94, 1000, 0.1],
    [114, 1000, 0.5],
    [94, 250, 0.02],
    [93.8, 251.2, 0.1],
    [94, 992, 0.1],
  ])('ties %d dB at %d Hz to what is heard', async (db, hz, amplitude) => {
    const outcome = await calibrate({ extra: tone(hz, amplitude) }, db);
    if (isTrouble(outcome)) throw new Error(outcome.sentence);
    const heardDb = 20 * Math.log10(amplitude / Math.SQRT2);
    expectClose(outcome.offsetDb, db - heardDb, 0.03);
    expect(outcome).toMatchObject({ how: 'calibrator', microphone: 'invented' });
  });

  it('waits until the calibrator sits', async () => {
    const late = (seconds: number): number => (seconds < 4 ? 0 : tone(1000, 0.1)(seconds));
    const outcome = await calibrate({ extra: late }, 94);
    if (isTrouble(outcome)) throw new Error(outcome.sentence);
    expectClose(outcome.offsetDb, 94 + 23.01, 0.1);
  });

  it('reads past a rumble that leaves 20 dB', async () => {
    const extra = (seconds: number): number => tone(1000, 0.1)(seconds) + tone(30, 0.009)(seconds);
    const outcome = await calibrate({ extra }, 94);
    expect(isTrouble(outcome)).toBe(false);
  });

  it('refuses another tone, and no tone', async () => {
    expect(await sentenceOf({ extra: tone(400, 0.1) })).toMatch(/a tone of 400 Hz/);
    expect(await sentenceOf({ noiseDb: -30 })).toMatch(/no steady tone/);
  });

  it('refuses a tone that moves', async () => {
    const extra = (s: number): number => (1 + 0.05 * Math.sin(6 * s)) * tone(1000, 0.1)(s);
    expect(await sentenceOf({ extra })).toMatch(/moves by ±0\.[345] dB/);
  });

  it('refuses a tone that barely stands over the rest', async () => {
    const chain = { extra: tone(1000, 0.01), noiseDb: -55 };
    expect(await sentenceOf(chain)).toMatch(/only 1[12]\.\d dB/);
  });

  it('refuses clipping and silence', async () => {
    const clipped = await calibrate({ extra: tone(1000, 2) }, 114);
    expect(clipped).toMatchObject({ trouble: 'too-loud' });
    const dull = (x: number): number => Math.max(Math.min(x, 0.3), -0.3);
    const soft = await calibrate({ extra: tone(1000, 0.5), noiseDb: -90, process: dull }, 114);
    expect(soft).toMatchObject({ trouble: 'too-loud' });
    const silent = await calibrate({ noiseDb: -100 }, 94);
    expect(silent).toMatchObject({ trouble: 'silence' });
  });

  it('refuses a level no calibrator has', async () => {
    const outcome = await calibrate({ extra: tone(1000, 0.1) }, 100);
    expect(outcome).toMatchObject({ trouble: 'bad-number' });
  });
});

describe('calibrateSoundLevel with a sound level meter', () => {
  it('ties its reading to steady noise, weighted with C', async () => {
    const outcome = await calibrate(
      { extra: tone(1000, 0.1), noiseDb: -60 },
      75,
      'sound level meter',
    );
    if (isTrouble(outcome)) throw new Error(outcome.sentence);
    expectClose(outcome.offsetDb, 75 + 23.01, 0.05);
  });

  it('takes noise', async () => {
    const outcome = await calibrate({ noiseDb: -30 }, 75, 'sound level meter');
    expect(isTrouble(outcome)).toBe(false);
  });

  it('refuses sound that comes and goes', async () => {
    const extra = (s: number): number => (s % 2 < 1 ? 1 : 0.3) * tone(1000, 0.1)(s);
    const outcome = await calibrate({ extra }, 75, 'sound level meter');
    expect(outcome).toMatchObject({ trouble: 'bad-calibration' });
  });

  it('refuses a full scale that no microphone has', async () => {
    const outcome = await calibrate({ noiseDb: -20 }, 40, 'sound level meter');
    expect(outcome).toMatchObject({ trouble: 'bad-calibration' });
    if (isTrouble(outcome)) expect(outcome.sentence).toMatch(/would be 6\d dB/);
  });

  it.each([29, 141, Number.NaN, Infinity])('refuses a typed %d dB', async (db) => {
    const outcome = await calibrate({ noiseDb: -30 }, db, 'sound level meter');
    expect(outcome).toMatchObject({ trouble: 'bad-number' });
  });
});

describe('calibrateSoundLevel', () => {
  it('gives the trouble of a line that ends', async () => {
    const outcome = await calibrate({ endAtSeconds: 2 }, 94);
    expect(outcome).toMatchObject({ trouble: 'device-gone' });
  });

  it('stops when aborted', async () => {
    const stop = new AbortController();
    const rig = fakeRig({ extra: tone(400, 0.1) });
    const running = calibrateSoundLevel(rig, {
      db: 94,
      how: 'calibrator',
      microphone: 'invented',
      at: '2026-01-01T00:00:00Z',
      signal: stop.signal,
    });
    setImmediate(() => stop.abort());
    expect(await running).toMatchObject({ trouble: 'stopped' });
    expect(rig.isOpen).toBe(false);
  });
});
