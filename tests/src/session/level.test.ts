import { describe, expect, it } from 'vitest';
import type { SessionDocument } from '../../../src/session/document';
import { fakeRig, type FakeRigOptions } from './fake-rig';
import { makeBench, settled, until } from './make-bench';
import { toldReadings } from './told-readings';

const wanted = { marginDb: 25, targetDb: null, capDb: 0 };

function benchOf(options: FakeRigOptions = {}, document: Partial<SessionDocument> = {}) {
  const room = fakeRig(options);
  const made = makeBench(
    { makeRig: () => Promise.resolve(room.rig) },
    { rig: 'live', layout: '2.0', ...document },
  );
  return { ...room, ...made };
}

describe('the climb to a level', () => {
  it('sets the gain it found for the takes, never above the cap, and says how it ended', async () => {
    const { bench, lines } = benchOf();
    const { capDb } = bench.state.document.live;
    await bench.climbLevel(wanted);
    expect(bench.state.trouble).toBeNull();
    const { climbed } = bench.state;
    expect(climbed?.sentence).not.toBe('');
    expect(bench.state.document.live.gainDb).toBe(climbed?.gainDb);
    expect(bench.state.document.live.gainDb).toBeLessThanOrEqual(capDb);
    expect(lines.every((line) => line.closed)).toBe(true);
  });

  it('is forgotten when a gain, a route or a device is changed, and by nothing else', async () => {
    const { bench } = benchOf();
    await bench.climbLevel(wanted);
    const { climbed } = bench.state;
    expect(climbed).not.toBeNull();
    bench.change('Rename', (document) => ({ ...document, name: 'Attic' }));
    expect(bench.state.climbed).toBe(climbed);
    bench.change('Route', (document) => ({
      ...document,
      live: { ...document.live, routes: { FL: 1 } },
    }));
    expect(bench.state.climbed).toBeNull();
  });

  it('goes back to quiet when nothing is heard, and says so', async () => {
    const { bench } = benchOf({ hears: 0 });
    await bench.climbLevel(wanted);
    expect(bench.state.climbed?.end).toBe('unheard');
    expect(bench.state.document.live.gainDb).toBe(bench.state.climbed?.gainDb);
    expect(bench.state.document.live.gainDb).toBeLessThan(-50);
  });

  it('is silent and sets nothing when stopped', async () => {
    const { bench, lines } = benchOf();
    const { gainDb } = bench.state.document.live;
    const run = bench.climbLevel(wanted);
    await until(bench, () => lines.length > 0);
    bench.stop();
    await run;
    expect(lines.every((line) => line.closed)).toBe(true);
    expect(bench.state.climbed).toBeNull();
    expect(bench.state.document.live.gainDb).toBe(gainDb);
  });
});

describe('calibrating the microphone', () => {
  const bytes = '20 0.5\n100 0.2\n1000 0\n5000 -0.5\n20000 -1.5\n';

  it('takes a calibration file into the session and saves it', async () => {
    const { bench, held } = benchOf();
    await bench.importCalibration(new File([bytes], 'invented.txt'));
    await settled();
    expect(bench.state.trouble).toBeNull();
    expect(bench.state.document.microphone.calibration).toMatchObject({
      name: 'invented.txt',
      hz: [20, 100, 1000, 5000, 20000],
      db: [0.5, 0.2, 0, -0.5, -1.5],
    });
    expect(held.documents.at(-1)).toEqual(bench.state.document);
  });

  it('reads the takes that are there again, corrected', async () => {
    const room = fakeRig();
    const used: (string | null)[] = [];
    const { bench } = makeBench(
      {
        makeRig: () => Promise.resolve(room.rig),
        read: (schedule, _capture, { calibration }) => {
          used.push(calibration?.name ?? null);
          return Promise.resolve(toldReadings(schedule));
        },
      },
      { rig: 'live' },
    );
    await bench.startTake();
    const before = bench.state.readings;
    await bench.importCalibration(new File([bytes], 'invented.txt'));
    expect(bench.state.trouble).toBeNull();
    expect(used).toEqual([null, 'invented.txt']);
    expect(bench.state.readings).toEqual(before);
    expect(bench.state.document.takes[0]?.outdated).toBe(false);
    expect(bench.state.document.takes.length).toBe(1);
  });

  it('refuses a file that makes no sense and leaves the session as it was', async () => {
    const { bench } = benchOf();
    await bench.importCalibration(new File([bytes], 'invented.txt'));
    const before = bench.state.document;
    await bench.importCalibration(new File(['dear diary'], 'diary.txt'));
    expect(bench.state.trouble?.trouble).toBe('bad-calibration');
    expect(bench.state.document).toBe(before);
  });

  it('notes which microphone the sound level was calibrated with', async () => {
    const { bench } = benchOf({ tone: 0.1 });
    bench.change('Choose microphone', (document) => ({
      ...document,
      live: { ...document.live, microphone: { id: 'm', name: 'Invented microphone' } },
    }));
    await bench.calibrateSoundLevel(94, 'calibrator');
    expect(bench.state.trouble).toBeNull();
    const { soundLevel } = bench.state.document.microphone;
    expect(soundLevel).toMatchObject({
      how: 'calibrator',
      microphone: 'Invented microphone',
      at: '2030-01-02T03:04:05.000Z',
    });
    // A sine of amplitude 0.1 has an rms of −23.01 dB re full scale.
    expect(soundLevel?.offsetDb).toBeCloseTo(94 + 23.01, 1);
  });

  it('keeps no sound level when no calibrator is heard', async () => {
    const { bench } = benchOf();
    await bench.calibrateSoundLevel(94, 'calibrator');
    expect(bench.state.trouble).not.toBeNull();
    expect(bench.state.document.microphone.soundLevel).toBeNull();
  });

  it('refuses a sound level that none can be, and keeps what was there', async () => {
    const { bench } = benchOf();
    const before = bench.state.document;
    await bench.calibrateSoundLevel(940, 'calibrator');
    expect(bench.state.trouble).not.toBeNull();
    expect(bench.state.document).toBe(before);
  });
});
