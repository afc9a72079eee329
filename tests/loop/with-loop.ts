import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { loopUrgency, startAudioServer } from './audio-server';
import { childrenOf, raise, trackProcesses } from './processes';
import type { Dynamics } from './room/dynamics';
import type { RoomFault } from './room/faults';
import type { HeardOutput } from './room/heard-output';
import type { RoomMessage, RoomReport } from './room/main';
import type { RoomSpec } from './room/room-spec';
import { roomTruth, type SpeakerTruth } from './room/truth';

/** What the room heard so far. */
export type RoomLevels = Exclude<RoomReport, { readonly ready: true }>;

/** The closed loop while it runs. */
export interface Loop {
  readonly environment: NodeJS.ProcessEnv;
  readonly truth: readonly SpeakerTruth[];
  /** Raw float of all outputs since the start, when recording was asked for. */
  readonly recordingPath: string;
  /** Takes the microphone away as pulling its plug does, and brings it back. */
  unplugMicrophone(): Promise<void>;
  plugMicrophone(): Promise<void>;
  inject(fault: RoomFault): void;
  /** Moves the microphone and the plugs: what is heard of the outputs from now on. */
  hear(outputs: readonly HeardOutput[], dynamics?: Dynamics): void;
  /** Ends the audio server in full flight; it comes back with its microphone. */
  crashServer(): Promise<void>;
  restartServer(): Promise<void>;
  switchOutput(): Promise<void>;
  switchBack(): Promise<void>;
  levels(): Promise<RoomLevels>;
}

export interface LoopOptions {
  /** Side of the stereo input on which the microphone sits; the other is silent. */
  readonly microphoneSide?: 'left' | 'right';
  readonly recordOutputs?: boolean;
  /** The other side carries what the first output plays, through a cable. */
  readonly loopback?: boolean;
  /** Channels of the interface; default 8. */
  readonly outputs?: number;
}

/**
 * Runs `use` inside a closed audio loop: virtual interface → room → virtual microphone.
 * Everything private, in a directory of its own; all of it is gone afterwards.
 */
export async function withLoop<T>(
  room: RoomSpec,
  use: (loop: Loop) => Promise<T>,
  options: LoopOptions = {},
): Promise<T> {
  const directory = await mkdtemp(path.join(tmpdir(), 'leadline-loop-'));
  const processes = trackProcesses();
  try {
    const outputs = options.outputs ?? 8;
    const server = await startAudioServer(processes, directory, outputs);
    await server.plugMicrophone();
    const roomPath = path.join(directory, 'room.json');
    await writeFile(roomPath, JSON.stringify(room));
    const recordingPath = options.recordOutputs === true ? path.join(directory, 'outputs.f32') : '';
    const side = options.microphoneSide === 'right' ? '1' : '0';
    const main = fileURLToPath(new URL('./room/main.ts', import.meta.url));
    const args = [
      '--import',
      'tsx',
      main,
      roomPath,
      server.microphonePipe,
      side,
      recordingPath,
      options.loopback === true ? '0' : '',
      String(outputs),
    ];
    const child = processes.start(process.execPath, args, {
      env: server.environment,
      stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    });
    const questions = new Map<number, (levels: RoomLevels) => void>();
    const ready = new Promise<void>((resolve, reject) => {
      child.once('exit', () => reject(new Error('the room of the loop ended')));
      child.on('message', (report: RoomReport) => {
        if ('ready' in report) resolve();
        else questions.get(report.id)?.(report);
      });
    });
    await ready;
    await raise(child.pid, loopUrgency);
    for (const listener of childrenOf(child.pid ?? 0)) await raise(listener, loopUrgency);
    const tell = (message: RoomMessage): void => void child.send(message);
    return await use({
      environment: server.environment,
      truth: roomTruth(room),
      recordingPath,
      unplugMicrophone: () => server.unplugMicrophone(),
      plugMicrophone: async () => {
        await server.plugMicrophone();
        tell({ plugged: true });
      },
      inject: (fault) => tell({ inject: fault }),
      hear: (heard, dynamics) => tell({ hear: heard, dynamics }),
      async crashServer() {
        tell({ server: 'ending' });
        await server.crash();
      },
      async restartServer() {
        await server.restart();
        await server.plugMicrophone();
        tell({ server: 'back' });
        tell({ plugged: true });
      },
      switchOutput: () => server.switchOutput(),
      switchBack: () => server.switchBack(),
      levels: () =>
        new Promise((resolve) => {
          const id = questions.size;
          questions.set(id, resolve);
          tell({ ask: 'levels', id });
        }),
    });
  } finally {
    await processes.endAll();
    await rm(directory, { recursive: true, force: true });
  }
}
