import { noExposure } from '../soundlevel/exposure';
import type { Layout } from '../system/channel';
import type { BenchState } from './bench';
import type { SessionDocument } from './document';
import { noHistoryNames } from './history/histories';
import { sessionsUnseen } from './shelf/sessions';

/** What a bench shows of a session before anything was derived from it. */
export function firstState(document: SessionDocument, layout: Layout): BenchState {
  return {
    document,
    layout,
    readings: null,
    together: [],
    proposal: null,
    proving: null,
    proof: null,
    activity: { kind: 'idle' },
    trouble: null,
    mic: null,
    soundLevel: null,
    abilities: null,
    toRepeat: [],
    exposure: noExposure,
    climbed: null,
    devices: null,
    saved: 'saved',
    history: noHistoryNames,
    sessions: sessionsUnseen,
  };
}
