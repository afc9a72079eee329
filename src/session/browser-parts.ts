import { inspectInWorker } from '../inspect/inspect-in-worker';
import { readInWorker } from '../reading/read-in-worker';
import { readTogetherInWorker } from '../reading/together-in-worker';
import { askForMicrophone } from '../rig/live/ask-for-microphone';
import { listDevices, watchDeviceList } from '../rig/live/list-devices';
import { liveRig } from '../rig/live/live-rig';
import { practiceRig } from '../rig/practice';
import { closeMetres } from '../rig/practice-hold';
import { hiddenFaults } from '../rig/practice-miswiring';
import { captureFromWav } from '../rig/recording-capture';
import { takeFiles } from '../rig/recording-stimulus';
import { trouble } from '../trouble';
import type { BenchParts } from './bench-parts';
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
        return Promise.resolve(practiceRig({ layout, seed, seat, ...held, faults, processor }));
      }
      if (document.rig === 'live') {
        const { output, microphone, microphoneInput, loopback } = document.live;
        return Promise.resolve(liveRig({ output, microphone, microphoneInput, loopback }));
      }
      return Promise.resolve(
        trouble(
          'no-output',
          'The recording rig plays nothing itself: save the take, play it, and bring the recording back.',
        ),
      );
    },
    read: readInWorker,
    readTogether: readTogetherInWorker,
    readStop: readStopInWorker,
    inspect: inspectInWorker,
    propose: proposeInWorker,
    takeFiles: (schedule) =>
      Promise.resolve(
        takeFiles(schedule).map(({ name, pieces }) => ({ name, blob: new Blob([...pieces]) })),
      ),
    readRecording: (bytes, schedule) =>
      captureFromWav(bytes, schedule, {
        startedAt: new Date().toISOString(),
        channel: 'the live one',
      }),
    newId: () => crypto.randomUUID(),
    now: () => new Date().toISOString(),
  };
}
