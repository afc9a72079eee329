import { describe, expect, it } from 'vitest';
import type { NoiseRequest } from '../../../src/noise/noise-state';
import type { SessionDocument } from '../../../src/session/document';
import { newSession } from '../../../src/session/new-session';
import { fakeRig } from './fake-rig';
import { makeBench, settled, until } from './make-bench';

const request: NoiseRequest = {
  kind: 'noise',
  channel: 'FR',
  lowHz: 500,
  highHz: 2000,
  gainDb: -30,
  bandsPerOctave: 3,
  averagingSeconds: 3,
};

function benchOf(document: Partial<SessionDocument> = {}) {
  const room = fakeRig();
  const made = makeBench(
    { makeRig: () => Promise.resolve(room.rig) },
    { rig: 'live', layout: '2.1', ...document },
  );
  return { ...room, ...made };
}

const calibrated: SessionDocument['microphone'] = {
  calibration: null,
  orientation: 'up',
  soundLevel: {
    offsetDb: 120,
    how: 'calibrator',
    at: '2030-01-01T00:00:00.000Z',
    microphone: 'Invented microphone',
  },
};

function liveWith(name: string): SessionDocument['live'] {
  return { ...newSession('', '').live, microphone: { id: 'm', name } };
}

describe('noise on the bench', () => {
  it('plays on the speaker asked for until stopped, and is silent then', async () => {
    const { bench, lines } = benchOf();
    const run = bench.startNoise(request);
    const { activity } = await until(bench, (state) => state.activity.kind === 'noise');
    expect(activity).toMatchObject({ kind: 'noise', noise: { request } });
    await until(bench, () => lines[0]?.sounds.at(-1)?.channel === 'FR');
    bench.stop();
    await run;
    expect(lines[0]?.closed).toBe(true);
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.trouble).toBeNull();
  });

  it('keeps a reading in the session, at the position, once however often it is asked', async () => {
    const { bench, held } = benchOf();
    const run = bench.startNoise(request);
    await until(
      bench,
      ({ activity }) => activity.kind === 'noise' && activity.noise.reading !== null,
    );
    bench.keepNoise();
    bench.keepNoise();
    bench.stop();
    await run;
    await settled();
    const { noiseReadings, position } = bench.state.document;
    expect(new Set(noiseReadings.map(({ id }) => id)).size).toBe(noiseReadings.length);
    expect(noiseReadings[0]).toMatchObject({ channel: 'FR', positionId: position.id });
    expect(held.documents.at(-1)?.noiseReadings).toEqual(noiseReadings);
  });

  it('has nothing to keep while nothing plays, and says so', () => {
    const { bench } = benchOf();
    bench.keepNoise();
    expect(bench.state.trouble?.sentence).toMatch(/no reading to keep/);
    expect(bench.state.document.noiseReadings).toEqual([]);
  });

  it('moves to another speaker while it runs, also from a main speaker to a sub', async () => {
    const { bench, lines } = benchOf();
    const run = bench.startNoise(request);
    await until(bench, () => lines[0]?.sounds.at(-1)?.channel === 'FR');
    bench.changeNoise({ ...request, channel: 'FL' });
    await until(bench, () => lines.at(-1)?.sounds.at(-1)?.channel === 'FL');
    bench.changeNoise({ ...request, channel: 'Sub 1', lowHz: 30, highHz: 80 });
    await until(bench, () => lines.at(-1)?.sounds.at(-1)?.channel === 'Sub 1');
    expect(lines.filter((line) => !line.closed).length).toBe(1);
    bench.stop();
    await run;
    expect(lines.every((line) => line.closed)).toBe(true);
    expect(bench.state.trouble).toBeNull();
  });

  it('asks for the plug before it moves to a speaker that has no output now', async () => {
    const room = fakeRig({ outputs: 8 });
    const { bench } = makeBench(
      { makeRig: () => Promise.resolve(room.rig) },
      { rig: 'live', layout: '7.1.4' },
    );
    const run = bench.startNoise(request);
    await until(bench, () => room.lines[0]?.sounds.at(-1)?.channel === 'FR');
    bench.changeNoise({ ...request, channel: 'TpBR' });
    const { activity } = await until(bench, (state) => state.activity.kind === 'waiting');
    expect(room.lines[0]?.closed).toBe(true);
    if (activity.kind !== 'waiting') throw new Error('it does not wait');
    expect(activity.prompt.steps.join(' ')).toMatch(/to TpBR/);
    bench.proceed();
    await until(bench, () => room.lines.at(-1)?.sounds.at(-1)?.channel === 'TpBR');
    bench.stop();
    await run;
    expect(bench.state.trouble).toBeNull();
  });

  it('is never louder than the session allows', async () => {
    const { bench, lines } = benchOf();
    const { capDb } = bench.state.document.live;
    const run = bench.startNoise({ ...request, gainDb: 0 });
    bench.changeNoise({ ...request, channel: 'FL', gainDb: 0 });
    await until(bench, () => lines.at(-1)?.sounds.at(-1)?.channel === 'FL');
    const gains = lines.flatMap(({ sounds }) => sounds.map((sound) => sound?.gainDb ?? -100));
    expect(Math.max(...gains)).toBe(capDb);
    bench.stop();
    await run;
  });

  it('lets nothing else run beside it', async () => {
    const { bench, played, lines } = benchOf();
    const run = bench.startNoise(request);
    await until(bench, () => lines.length === 1);
    await bench.startTake();
    expect(played.length).toBe(0);
    expect(bench.state.trouble?.sentence).toMatch(/running/);
    bench.stop();
    await run;
  });

  it('reads the sound level as the meter is set, and counts what the room took', async () => {
    const { bench } = benchOf({ microphone: calibrated, live: liveWith('Invented microphone') });
    bench.setMeter('C', 'fast');
    const run = bench.startNoise(request);
    const { activity } = await until(
      bench,
      ({ activity, exposure }) =>
        activity.kind === 'noise' && activity.noise.soundLevel !== null && exposure.dose !== null,
    );
    if (activity.kind !== 'noise') throw new Error('no noise runs');
    expect(activity.noise.soundLevel).toMatchObject({
      weighting: 'C',
      time: 'fast',
      calibrated: true,
    });
    expect(bench.state.exposure.seconds).toBeGreaterThan(0);
    bench.stop();
    await run;
    expect(bench.state.soundLevel).toBeNull();
  });

  it('says that the sound level was calibrated with another microphone, and does not use it', async () => {
    const { bench } = benchOf({ microphone: calibrated, live: liveWith('Another microphone') });
    const run = bench.startNoise(request);
    const { activity, trouble } = await until(
      bench,
      ({ activity }) => activity.kind === 'noise' && activity.noise.soundLevel !== null,
    );
    expect(trouble?.sentence).toContain('Invented microphone');
    if (activity.kind !== 'noise') throw new Error('no noise runs');
    expect(activity.noise.soundLevel?.calibrated).toBe(false);
    expect(bench.state.exposure.dose).toBeNull();
    bench.stop();
    await run;
  });
});
