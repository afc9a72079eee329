import { execFile, type ChildProcess } from 'node:child_process';
import { openSync, readFileSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { channelMap } from './channel-map';
import { raise, type Processes } from './processes';

const run = promisify(execFile);

/** Server and room come before all that plays and captures through them. */
export const loopUrgency = ['fifo', 20] as const;

/** A private audio server: an output "speakers" of many channels and, when asked for, a microphone. */
export interface AudioServer {
  /** Environment in which programs find this server and no other. */
  readonly environment: NodeJS.ProcessEnv;
  /** The pipe the microphone reads: interleaved stereo float at 48 kHz. */
  readonly microphonePipe: string;
  pactl(...args: string[]): Promise<string>;
  plugMicrophone(): Promise<void>;
  /** Takes the microphone away, as pulling its plug does. */
  unplugMicrophone(): Promise<void>;
  /** Ends the server as a crash does, and starts it again with the same devices but no microphone. */
  crash(): Promise<void>;
  restart(): Promise<void>;
  /** Takes the outputs to another device, as choosing it in the system's sound settings does. */
  switchOutput(): Promise<void>;
  switchBack(): Promise<void>;
}

/** Starts the server in `directory`, which must be private and empty. */
export async function startAudioServer(
  processes: Processes,
  directory: string,
  outputs: number,
): Promise<AudioServer> {
  const runtime = path.join(directory, 'run');
  const state = path.join(directory, 'state');
  for (const each of [runtime, state]) await mkdir(each, { mode: 0o700 });
  const socket = path.join(runtime, 'native');
  const configuration = path.join(directory, 'daemon.conf');
  const settings = {
    'default-sample-format': 'float32le',
    'default-sample-rate': 48000,
    'alternate-sample-rate': 48000,
    'default-sample-channels': outputs,
    'default-channel-map': channelMap(outputs),
    'avoid-resampling': 'yes',
    'flat-volumes': 'no',
    'rlimit-rttime': -1,
  };
  const lines = Object.entries(settings).map(([name, value]) => `${name} = ${value}\n`);
  await writeFile(configuration, lines.join(''));

  const environment: NodeJS.ProcessEnv = {
    ...process.env,
    XDG_RUNTIME_DIR: runtime,
    PULSE_RUNTIME_PATH: runtime,
    PULSE_STATE_PATH: state,
    PULSE_SERVER: `unix:${socket}`,
    PULSE_CONFIG: configuration,
  };
  for (const name of ['DBUS_SESSION_BUS_ADDRESS', 'PULSE_SINK', 'PULSE_SOURCE']) {
    environment[name] = undefined;
  }
  const log = path.join(directory, 'server.log');
  const args = [
    '-n',
    '--daemonize=no',
    '--exit-idle-time=-1',
    '--use-pid-file=no',
    '--high-priority=yes',
    '--realtime=yes',
    '--log-level=notice',
    '--log-target=stderr',
    '-L',
    `module-native-protocol-unix socket=${socket} auth-anonymous=1`,
    '-L',
    `module-null-sink sink_name=speakers channels=${outputs} rate=48000 format=float32le channel_map=${channelMap(outputs)} sink_properties=device.description=Interface`,
  ];
  const pactl = async (...words: string[]): Promise<string> =>
    (await run('pactl', words, { env: environment })).stdout;
  const start = async (): Promise<ChildProcess> => {
    const started = processes.start('pulseaudio', args, {
      env: environment,
      stdio: ['ignore', 'ignore', openSync(log, 'a')],
    });
    await untilAnswering(started, pactl, log);
    // The server itself gives its threads less.
    await raise(started.pid, loopUrgency);
    await pactl('set-default-sink', 'speakers');
    return started;
  };
  let server = await start();

  const microphonePipe = path.join(directory, 'microphone');
  let microphoneModule: string | null = null;
  let drain: ChildProcess | null = null;
  return {
    environment,
    microphonePipe,
    pactl,
    async plugMicrophone() {
      const loaded = await pactl(
        'load-module',
        'module-pipe-source',
        'source_name=microphone',
        `file=${microphonePipe}`,
        'channels=2',
        'rate=48000',
        'format=float32le',
        'channel_map=front-left,front-right',
        'source_properties=device.description=Microphone',
      );
      microphoneModule = loaded.trim();
      await pactl('set-default-source', 'microphone');
      await returnListener(pactl, outputs);
      // A pipe source that nobody records from stops reading its pipe.
      const parec = ['--raw', '--device=microphone', '--latency-msec=20'];
      drain = processes.start('parec', parec, { env: environment, stdio: 'ignore' });
    },
    async unplugMicrophone() {
      if (microphoneModule !== null) await pactl('unload-module', microphoneModule);
      microphoneModule = null;
      if (drain) await processes.end(drain);
    },
    async crash() {
      const gone = new Promise<void>((resolve) => server.once('exit', () => resolve()));
      server.kill('SIGKILL');
      await gone;
      microphoneModule = null;
      await rm(socket, { force: true });
      await rm(microphonePipe, { force: true });
    },
    async restart() {
      server = await start();
    },
    async switchOutput() {
      const other = ['sink_name=other', 'channels=2', 'rate=48000', 'format=float32le'];
      await pactl('load-module', 'module-null-sink', ...other);
      await pactl('set-default-sink', 'other');
      for (const line of (await pactl('list', 'short', 'sink-inputs')).split('\n')) {
        const [id = ''] = line.split('\t');
        if (id !== '') await pactl('move-sink-input', id, 'other');
      }
    },
    async switchBack() {
      await pactl('set-default-sink', 'speakers');
    },
  };
}

/** A new default source takes along what listened to the old one; the room listens to the outputs. */
async function returnListener(
  pactl: (...words: string[]) => Promise<string>,
  outputs: number,
): Promise<void> {
  const listening = (await pactl('list', 'short', 'source-outputs')).split('\n');
  for (const line of listening.filter((each) => each.includes(` ${outputs}ch `))) {
    await pactl('move-source-output', line.split('\t')[0] ?? '', 'speakers.monitor');
  }
}

async function untilAnswering(
  server: ChildProcess,
  pactl: (...words: string[]) => Promise<string>,
  log: string,
): Promise<void> {
  for (let attempt = 0; attempt < 100 && server.exitCode === null; attempt++) {
    try {
      await pactl('info');
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
  throw new Error(`the audio server did not start:\n${readFileSync(log, 'utf8')}`);
}
