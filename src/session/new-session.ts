import { defaultProcessorSteps } from '../proposal/default-processor-steps';
import type { SessionDocument } from './document';

/** A fresh session, in the practice room, ready to run. */
export function newSession(id: string, createdAt: string): SessionDocument {
  return {
    format: 'leadline-session',
    version: 1,
    id,
    name: 'New room',
    createdAt,
    layout: '5.2.4',
    conditions: { temperatureCelsius: 20, referenceDistanceMetres: 2.4 },
    rig: 'practice',
    practice: { seed: 3 },
    live: { outputId: null, microphoneId: null, gainDb: -30 },
    processor: defaultProcessorSteps,
    chosenCrossoverHz: {},
    takes: [],
  };
}
