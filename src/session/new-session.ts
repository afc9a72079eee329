import { msg } from '@lit/localize';
import { nothingInForce } from '../system/declared-settings';
import { nothingDeclared } from '../system/declared-system';
import { noModelsDeclared } from '../system/speaker-models';
import { noChoices } from '../proposal/choices';
import { firstSteps } from '../proposal/default-processor-steps';
import type { SessionDocument } from './document';

/** A fresh session, in the practice room, ready to run. */
export function newSession(id: string, createdAt: string): SessionDocument {
  return {
    format: 'leadline-session',
    version: 2,
    id,
    name: msg('New room'),
    createdAt,
    layout: '5.2.4',
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
    position: { id: 'seat-1', name: msg('Seat 1'), kind: 'seat' },
    processor: firstSteps(),
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
