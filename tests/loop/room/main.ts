import { spawn, type ChildProcess } from 'node:child_process';
import { createWriteStream, openSync, readFileSync, writeSync, type WriteStream } from 'node:fs';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { channelMap } from '../channel-map';
import { createConvolver } from './convolver';
import { createDynamics, type Dynamics } from './dynamics';
import { createFaultLine, type RoomFault } from './faults';
import { heardResponse, type HeardOutput } from './heard-output';
import { roomResponse } from './room-response';
import type { RoomSpec } from './room-spec';
import { createSkew } from './skew';

/*
 * The room as a process: hears what the virtual interface plays (all channels in float through
 * parec), gives what the microphone hears to the pipe of the virtual microphone. Faults and
 * questions come over the IPC channel.
 *
 * node main.ts ROOM.json MICROPHONE_PIPE MICROPHONE_CHANNEL RECORDING LOOPBACK_OUTPUT OUTPUTS
 */
const blockLength = 1024;
/** The cable ends in an input that is turned down by 6 dB. */
const loopbackGain = 0.5;

/** Question or order to the room. */
export type RoomMessage =
  | { readonly inject: RoomFault }
  /** The microphone or a plug was moved: what is heard of the outputs from now on. */
  | { readonly hear: readonly HeardOutput[]; readonly dynamics?: Dynamics | undefined }
  /** The microphone was plugged in again: its pipe is a new one. */
  | { readonly plugged: true }
  /** The audio server is about to end, or is back: the outputs are gone until then. */
  | { readonly server: 'ending' | 'back' }
  | { readonly ask: 'levels'; readonly id: number };

/** What the room says of itself. */
export type RoomReport =
  | { readonly ready: true }
  | {
      readonly id: number;
      /** Frames heard so far. */
      readonly frames: number;
      /** Frames since anything but silence was played. */
      readonly silentFrames: number;
      readonly peaks: readonly number[];
    };

function runRoom(
  roomPath: string,
  pipePath: string,
  side: number,
  recordingPath: string,
  loopbackOutput: number | null,
  outputs: number,
): void {
  const room = JSON.parse(readFileSync(roomPath, 'utf8')) as RoomSpec;
  const noise = gaussian(seededRandom(room.seed));
  const responses = Array.from({ length: outputs }, (_, output) => {
    const speaker = room.speakers.find((one) => one.output === output);
    return speaker ? roomResponse(room, speaker) : null;
  });
  let convolver = createConvolver(responses, blockLength);
  let turnDown: ((block: Float64Array) => Float64Array)[] = [];
  const skew = createSkew(1 + room.skewPpm * 1e-6);
  const wireSkew = createSkew(1 + room.skewPpm * 1e-6);
  const faults = createFaultLine();
  const wireFaults = createFaultLine();
  const noiseRms = 10 ** (room.noiseDb / 20);
  let microphone: WriteStream | null = null;
  const plug = (): void => {
    const stream = createWriteStream(pipePath);
    // An unplugged microphone has no pipe any more; the room goes on without it.
    stream.on('error', () => {
      if (microphone === stream) microphone = null;
    });
    microphone = stream;
  };
  plug();
  const recording = recordingPath === '' ? null : openSync(recordingPath, 'w');
  const state = { frames: 0, silentFrames: 0, peaks: new Float64Array(outputs) };

  const hear = (block: Float32Array): void => {
    let loudest = 0;
    for (let output = 0; output < outputs; output++) {
      const one = new Float64Array(blockLength);
      let peak = 0;
      for (let n = 0; n < blockLength; n++) {
        const value = block[n * outputs + output] ?? 0;
        one[n] = value;
        peak = Math.max(peak, Math.abs(value));
      }
      state.peaks[output] = Math.max(state.peaks[output] ?? 0, peak);
      loudest = Math.max(loudest, peak);
      convolver.add(output, turnDown[output]?.(one) ?? one);
    }
    state.frames += blockLength;
    state.silentFrames = loudest === 0 ? state.silentFrames + blockLength : 0;
    const clean = skew(convolver.take());
    const heard = faults.apply(
      clean.map((value) => value + noiseRms * noise()),
      noise,
    );
    const stereo = new Float32Array(heard.length * 2);
    for (const [n, value] of heard.entries()) stereo[2 * n + side] = value;
    if (loopbackOutput !== null) {
      const played = Float64Array.from({ length: blockLength }, (_, n) => {
        return block[n * outputs + loopbackOutput] ?? 0;
      });
      const wire = wireFaults.apply(wireSkew(played), noise);
      for (const [n, value] of wire.entries()) stereo[2 * n + 1 - side] = loopbackGain * value;
    }
    microphone?.write(Buffer.from(stereo.buffer));
  };

  process.on('message', (message: RoomMessage) => {
    if ('inject' in message) {
      const { inject } = message;
      faults.inject(inject);
      // Lost and repeated frames hit both sides of one input alike.
      if (inject.kind === 'drop' || inject.kind === 'repeat') wireFaults.inject(inject);
    }
    if ('hear' in message) {
      const heard = Array.from({ length: outputs }, (_, output) =>
        heardResponse(message.hear.find((one) => one.output === output)),
      );
      convolver = createConvolver(heard, blockLength);
      const { dynamics } = message;
      turnDown = dynamics ? heard.map(() => createDynamics(dynamics, room.sampleRate)) : [];
    }
    if ('plugged' in message) plug();
    if ('server' in message) {
      serverEnds = message.server === 'ending';
      if (!serverEnds) listen();
    }
    if ('ask' in message) answer({ id: message.id, ...state, peaks: [...state.peaks] });
  });
  const blockBytes = blockLength * outputs * 4;
  let serverEnds = false;
  let listener: ChildProcess | null = null;
  const end = (): void => {
    listener?.kill();
    process.exit(0);
  };
  const listen = (): void => {
    let rest: Buffer = Buffer.alloc(0);
    const child = hearOutputs(room.sampleRate, outputs);
    listener = child;
    child.stdout.on('data', (data: Buffer) => {
      if (recording !== null) writeSync(recording, data);
      let bytes = rest.length > 0 ? Buffer.concat([rest, data]) : data;
      while (bytes.length >= blockBytes) {
        const block = new Uint8Array(bytes.subarray(0, blockBytes));
        hear(new Float32Array(block.buffer));
        bytes = bytes.subarray(blockBytes);
      }
      rest = bytes;
    });
    child.stdout.once('data', () => answer({ ready: true }));
    child.on('exit', () => {
      if (!serverEnds) end();
    });
  };
  process.on('disconnect', end);
  process.on('SIGTERM', end);
  listen();
}

/** All outputs of the virtual interface as they are played, interleaved float. */
function hearOutputs(sampleRate: number, outputs: number) {
  return spawn(
    'parec',
    [
      '--raw',
      '--device=speakers.monitor',
      '--format=float32le',
      `--rate=${sampleRate}`,
      `--channels=${outputs}`,
      `--channel-map=${channelMap(outputs)}`,
      '--latency-msec=20',
    ],
    { stdio: ['ignore', 'pipe', 'ignore'] },
  );
}

function answer(report: RoomReport): void {
  process.send?.(report);
}

const [roomPath = '', pipePath = '', side = '0', recordingPath = '', loopback = '', count = '8'] =
  process.argv.slice(2);
const cable = loopback === '' ? null : Number(loopback);
runRoom(roomPath, pipePath, Number(side), recordingPath, cable, Number(count));
