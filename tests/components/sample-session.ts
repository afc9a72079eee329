import { noChoices } from '../../src/proposal/choices';
import type { SessionDocument, TakeRecord } from '../../src/session/document';
import { nothingInForce } from '../../src/system/declared-settings';
import { nothingDeclared } from '../../src/system/declared-system';
import { noModelsDeclared } from '../../src/system/speaker-models';
import { layoutFromName } from '../../src/system/layout';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';
import { sampleReadings } from './sample-readings';

/** An invented session in the practice room. */
export function sampleDocument(layout: string): SessionDocument {
  return {
    format: 'leadline-session',
    version: 2,
    id: 'invented session',
    name: 'Invented room',
    createdAt: '2025-01-01T00:00:00.000Z',
    layout,
    conditions: { temperatureCelsius: 20, referenceDistanceMetres: 2.4 },
    rig: 'practice',
    practice: { seed: 3, hidden: null, slips: [], gainDb: 0 },
    live: {
      output: null,
      microphone: null,
      gainDb: -30,
      capDb: -6,
      routes: {},
      lfeOutput: null,
      microphoneInput: null,
      loopback: false,
    },
    microphone: { calibration: null, orientation: 'not noted', soundLevel: null },
    take: {
      sweepSeconds: 2 ** 17 / 48000,
      averages: 1,
      pauseSeconds: 0,
      overlap: false,
      repeats: 1,
    },
    position: { id: 'seat-1', name: 'Seat 1', kind: 'seat' },
    processor: {
      crossoverHz: [40, 60, 80, 100, 120],
      distanceStepMetres: 0.03,
      distanceRangeMetres: [0, 18],
      levelStepDb: 0.5,
      levelRangeDb: [-12, 12],
    },
    chosenCrossoverHz: {},
    takes: [],
    noiseReadings: [],
    system: nothingDeclared,
    sheet: null,
    earAnswers: {},
    walk: [],
    seatSounds: [],
    inForce: nothingInForce,
    models: noModelsDeclared,
    choices: noChoices,
    typed: {},
    notes: '',
  };
}

/** An invented take of a layout, read. */
export function sampleTake(name: string): TakeRecord {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return {
    id: 'invented take',
    position: { id: 'seat-1', name: 'Seat 1', kind: 'seat' },
    startedAt: '2025-01-01T00:01:00.000Z',
    rig: 'practice',
    simulated: true,
    schedule: scheduleTake(layout),
    captureId: 'invented capture',
    loopbackId: null,
    captureRate: 48000,
    notes: ['invented'],
    readings: sampleReadings(layout),
  };
}
