import { msg, str } from '@lit/localize';
import { dbToAmplitude } from '../../../dsp/level/decibels';
import type { Schedule } from '../../take/schedule';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Capture, MicLevel, PlayOptions } from '../port';
import { connectSpeakers, type Speakers } from './connect-speakers';
import { lossNotes } from './loss-notes';
import { openAudio, type OpenAudio } from './open-audio';
import type { Output } from './open-output';
import { inputNotes, pickInputs } from './pick-inputs';
import { platformUnknowns } from './platform-unknowns';
import { createRecorder, type Recorder } from './recorder';
import { routeOutputs, type OutputRoute } from './route-outputs';
import { settleSeconds } from './settle-context';
import type { TakeDevices } from './take-devices';
import { createTakeEnding, watchPage, type TakeEnding } from './take-ending';
import { latencySeconds } from '../../take/shorten-schedule';

/** From the decision to start until the first frame, so that it is still ahead. */
const leadSeconds = 0.25;
/** What output and input are late together on a wired device (0.12 to 0.4 s seen): so much of a broken take is not heard. */
const usualLatencySeconds = 0.75;

/** A loopback that never reaches this has no signal, −66 dB. */
const leastLoopback = 2 ** -11;

/** Plays one take, from the permission to the microphone to the capture; see Rig.play. */
export async function playTake(
  schedule: Schedule,
  devices: TakeDevices,
  options: PlayOptions,
  onLevel: (level: MicLevel) => void,
): Promise<Capture | Trouble> {
  const gainDb = Math.min(0, options.gainDb ?? 0);
  if (Number.isNaN(gainDb)) throw new RangeError(`gainDb must be a number, got ${options.gainDb}`);
  const ending = createTakeEnding();
  watchPage(ending, options.signal);
  try {
    const run: TakeRun = { schedule, devices, options: { ...options, gainDb }, ending };
    const capture = await runTake(run, onLevel);
    return capture ?? ending.reason ?? failed(msg('ended too early'));
  } catch (error) {
    return ending.reason ?? failed(error instanceof Error ? error.message : String(error));
  } finally {
    ending.finish();
  }
}

interface TakeRun {
  readonly schedule: Schedule;
  readonly devices: TakeDevices;
  readonly options: PlayOptions & { readonly gainDb: number };
  readonly ending: TakeEnding;
}

interface Ready {
  readonly speakers: Speakers;
  readonly route: OutputRoute;
}

/** Null when the take ended before its time; `ending` knows why. */
async function runTake(
  run: TakeRun,
  onLevel: (level: MicLevel) => void,
): Promise<Capture | Trouble | null> {
  const { schedule, devices, options, ending } = run;
  const { lengthSamples, sampleRate } = schedule;
  const waitSeconds = settleSeconds + leadSeconds + latencySeconds;
  const secondsLeft = lengthSamples / sampleRate + waitSeconds;
  options.onProgress?.({ phase: 'starting', progress: 0, secondsLeft, position: 0 });
  const before = settleSeconds + leadSeconds;
  const recorder = createRecorder(schedule, before, latencySeconds, options, onLevel);
  const prepare = (output: Output): Ready | Trouble => {
    const route = routeOutputs(schedule.channels, output.channels, options.routes);
    if (isTrouble(route)) return route;
    const { context } = output;
    if (context.sampleRate !== sampleRate) return otherRate(context.sampleRate, sampleRate);
    const speakers = connectSpeakers(output, schedule, route);
    ending.atEnd(() => speakers.silence());
    return { speakers, route };
  };
  const audio = await openAudio(devices, ending, prepare, (message) => recorder.listen(message));
  if (audio === null || isTrouble(audio)) return audio;
  const { speakers, route } = audio.ready;
  const { context } = audio.output;
  // Whole quarters of a second are exact both in seconds and in frames.
  const startSeconds = Math.ceil((context.currentTime + leadSeconds) * 4) / 4;
  const startsIn = startSeconds - context.currentTime;
  const startedAt = new Date(Date.now() + startsIn * 1000).toISOString();
  recorder.keepFrom(startSeconds * sampleRate);
  speakers.start(startSeconds * sampleRate, dbToAmplitude(options.gainDb));
  await ending.until(recorder.complete);
  const heard = { recorder, audio, route, startedAt };
  if (!ending.reason) return captureOf(run, heard);
  const heardSamples = recorder.heardFrames() - usualLatencySeconds * sampleRate;
  if (heardSamples > 0) options.onPartial?.(captureOf(run, heard), heardSamples);
  return null;
}

interface Heard {
  readonly recorder: Recorder;
  readonly audio: Pick<OpenAudio<Ready>, 'microphone' | 'output'>;
  readonly route: OutputRoute;
  readonly startedAt: string;
}

function captureOf(run: TakeRun, { recorder, audio, route, startedAt }: Heard): Capture {
  const { schedule, devices, options } = run;
  const { microphone, output } = audio;
  const { sampleRate, silence } = schedule;
  const { channels, gaps } = recorder.assemble();
  const picked = pickInputs(channels, silence.start + silence.length, devices);
  const samples = channels[picked.microphone] ?? new Float32Array(0);
  const wire = picked.loopback === null ? null : (channels[picked.loopback] ?? null);
  // A cable that carries nothing tells no time; the marks do.
  const loopback = wire?.some((value) => Math.abs(value) > leastLoopback) ? wire : null;
  const outputNames = [...route].map(([label, index]) => `${label} ${index + 1}`).join(', ');
  const notes = [
    ...microphone.notes,
    ...inputNotes(picked),
    ...(wire && !loopback
      ? [msg('loopback: no signal came through it, so the marks tell the time')]
      : []),
    msg(str`rate of the take: ${sampleRate} Hz`),
    msg(str`gain: ${options.gainDb} dB`),
    msg(str`outputs: ${outputNames} of ${output.channels}`),
    ...[...microphone.unknown, ...platformUnknowns()].map((what) =>
      msg(str`not told by the browser: ${what}`),
    ),
    ...lossNotes(output, samples),
  ];
  return { samples, loopback, sampleRate, startedAt, rig: 'live', simulated: false, gaps, notes };
}

function otherRate(rate: number, wanted: number): Trouble {
  return trouble(
    'wrong-rate',
    msg(
      str`The audio output runs at ${rate / 1000} kHz and this take is written for ${wanted / 1000} kHz. Set the output to ${wanted / 1000} kHz in the system's sound settings, then run the take again.`,
    ),
  );
}

/** What is said when the browser's audio fails in no way that is known. */
export function failed(why: string): Trouble {
  return trouble(
    'failed',
    msg(str`The browser's audio failed (${why}). Reload the page and run the take again.`),
  );
}
