import * as v from 'valibot';
import { describe, expect, it } from 'vitest';
import { migrateSession } from '../../../src/session/migrate-session';
import { sessionSchema } from '../../../src/session/store-schema';
import { hashText } from '../../../src/take/schedule-id';
import { sampleReadings } from '../../components/sample-readings';
import { layoutOf } from '../../components/fake-bench';
import { sampleDocument } from '../../components/sample-session';

/** A session as version 1 of the program stored it, written out by hand. */
const session1 = {
  format: 'leadline-session',
  version: 1,
  id: 'an old session',
  name: 'Attic',
  createdAt: '2025-01-01T00:00:00.000Z',
  layout: '2.0',
  conditions: { temperatureCelsius: 23, referenceDistanceMetres: 1.9 },
  rig: 'live',
  practice: { seed: 7 },
  live: { outputId: 'a1b2', microphoneId: null, gainDb: -21.5 },
  processor: {
    crossoverHz: [60, 80],
    distanceStepMetres: 0.1,
    distanceRangeMetres: [0, 12],
    levelStepDb: 1,
    levelRangeDb: [-10, 10],
  },
  chosenCrossoverHz: { fronts: 60 },
  takes: [
    {
      id: 'an old take',
      position: { name: 'Seat 1', kind: 'seat' },
      startedAt: '2025-01-01T00:01:00.000Z',
      rig: 'live',
      simulated: false,
      schedule: schedule1(),
      captureId: 'an old capture',
      captureRate: 44100,
      notes: ['gain: -21.5 dB'],
      readings: sampleReadings(layoutOf('2.0')),
    },
  ],
};

/** A take's schedule as version 1 had it: segments say nothing of a replay gain. */
function schedule1() {
  const sweep = {
    startHz: 10,
    endHz: 20000,
    lengthSamples: 24000,
    fadeInSamples: 2400,
    fadeOutSamples: 240,
  };
  const schedule = {
    format: 'leadline-take',
    version: 1,
    layout: '2.0',
    sampleRate: 48000,
    lengthSamples: 480000,
    channels: ['FL', 'FR'],
    reference: 'FL',
    silence: { start: 0, length: 192000 },
    wake: { start: 192000, length: 96000, levelDb: -42 },
    mark: { startHz: 2000, endHz: 12000, lengthSamples: 1440, fadeSamples: 144 },
    markStarts: [312000, 352000, 392000],
    peakDb: -12,
    segments: [
      { channel: 'FL', markStart: 312000, sweepStart: 320000, sweep, end: 352000 },
      { channel: 'FR', markStart: 352000, sweepStart: 360000, sweep, end: 392000 },
    ],
  };
  return { ...schedule, id: hashText(JSON.stringify(schedule)).toString(16) };
}

describe('a session stored by version 1', () => {
  const migrated = v.parse(sessionSchema, migrateSession(session1));

  it('keeps everything that it held', () => {
    const { id, name, createdAt, layout, conditions, rig, practice } = session1;
    expect(migrated).toMatchObject({ id, name, createdAt, layout, conditions, rig, practice });
    expect(migrated.processor).toEqual(session1.processor);
    expect(migrated.chosenCrossoverHz).toEqual({ fronts: 60 });
    expect(migrated.live.gainDb).toBe(-21.5);
  });

  it('keeps chosen devices by their id, without a name', () => {
    expect(migrated.live.output).toEqual({ id: 'a1b2', name: '' });
    expect(migrated.live.microphone).toBeNull();
  });

  it('keeps its take at the first seat, with its readings and its schedule', () => {
    const [take] = migrated.takes;
    const [old] = session1.takes;
    expect(take).toMatchObject({
      id: 'an old take',
      position: { id: 'seat-1', name: 'Seat 1', kind: 'seat' },
      captureId: 'an old capture',
      loopbackId: null,
      captureRate: 44100,
      notes: ['gain: -21.5 dB'],
      readings: old?.readings,
    });
    expect(take?.schedule.id).toBe(old?.schedule.id);
    expect(take?.schedule.version).toBe(2);
    expect(take?.schedule.segments.map(({ replayGainDb }) => replayGainDb)).toEqual([0, 0]);
  });

  it('stands at that seat, with nothing calibrated and the level capped', () => {
    expect(migrated.position.id).toBe('seat-1');
    expect(migrated.microphone).toEqual({
      calibration: null,
      orientation: 'not noted',
      soundLevel: null,
    });
    expect(migrated.live.capDb).toBeLessThanOrEqual(0);
  });

  it('is left as it is when it is of this version, or damaged', () => {
    const now = sampleDocument('5.1');
    expect(migrateSession(now)).toBe(now);
    expect(migrateSession('words')).toBe('words');
    expect(migrateSession({ ...session1, takes: 'gone', live: 3 })).toMatchObject({
      takes: 'gone',
      live: 3,
    });
  });
});
