import { msg } from '@lit/localize';
import { inspectInWorker } from '../inspect/inspect-in-worker';
import { withLate } from '../late';
import { judgeInWorker } from '../proof/judge-in-worker';
import { readInWorker } from '../reading/read-in-worker';
import { readTogetherInWorker } from '../reading/together-in-worker';
import { askForMicrophone } from '../rig/live/ask-for-microphone';
import { listDevices, watchDeviceList } from '../rig/live/list-devices';
import { closeMetres } from '../rig/practice-hold';
import { hiddenFaults } from '../rig/practice-miswiring';
import { trouble } from '../trouble';
import type { BenchParts } from './bench-parts';
import { lateLive, latePractice, lateRecording } from './late-rigs';
import { practiceSeat } from './practice-seat';
import { proposeInWorker } from './propose-in-worker';
import { readStopInWorker } from '../wirecheck/stop-in-worker';
import type { SessionStore } from './session-store';

/** The parts of the bench in a browser: real rigs, readings in a worker. */
export function browserParts(store: SessionStore): BenchParts {
  return {
    store,
    devices: { list: listDevices, ask: askForMicrophone, watch: watchDeviceList },
    makeRig(document, layout, hold = null, proving = null) {
      if (document.rig === 'practice') {
        const seat = practiceSeat(document.position);
        const faults = hiddenFaults(layout, document.practice.hidden);
        const { seed, slips } = document.practice;
        const processor = proving && { typed: proving, slips };
        const near = hold === null ? document.position.close?.channel : undefined;
        const held = near === undefined ? { hold } : { hold: near, holdMetres: closeMetres };
        const options = { layout, seed, seat, ...held, faults, processor };
        return withLate(latePractice, ({ practiceRig }) => Promise.resolve(practiceRig(options)));
      }
      if (document.rig === 'live') {
        const { output, microphone, microphoneInput, loopback } = document.live;
        const options = { output, microphone, microphoneInput, loopback };
        return withLate(lateLive, ({ liveRig }) => Promise.resolve(liveRig(options)));
      }
      return Promise.resolve(
        trouble(
          'no-output',
          msg(
            'The recording rig plays nothing itself: save the take, play it, and bring the recording back.',
          ),
        ),
      );
    },
    read: readInWorker,
    readTogether: readTogetherInWorker,
    readStop: readStopInWorker,
    inspect: inspectInWorker,
    propose: proposeInWorker,
    judge: judgeInWorker,
    takeFiles: (schedule) =>
      withLate(lateRecording, ({ takeFiles }) =>
        Promise.resolve(
          takeFiles(schedule).map(({ name, pieces }) => ({ name, blob: new Blob([...pieces]) })),
        ),
      ),
    readRecording: (bytes, schedule) =>
      withLate(lateRecording, ({ captureFromWav }) => {
        const startedAt = new Date().toISOString();
        return Promise.resolve(
          captureFromWav(bytes, schedule, { startedAt, channel: 'the live one' }),
        );
      }),
    newId: () => crypto.randomUUID(),
    now: () => new Date().toISOString(),
  };
}
