import { dbToAmplitude } from '../../../dsp/level/decibels';
import type { ChannelLabel } from '../../system/channel';
import type { Schedule } from '../../take/schedule';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { Capture, MicLevel, PlayOptions } from '../port';
import type { CaptureMessage } from './capture-message';
import { chooseChannel } from './choose-channel';
import { connectCapture } from './connect-capture';
import { connectSpeakers } from './connect-speakers';
import { countStarved } from './count-starved';
import { openMicrophone } from './open-microphone';
import { openOutput, type Output } from './open-output';
import { createRecorder } from './recorder';
import { routeOutputs } from './route-outputs';
import { createTakeEnding, watchPage, type TakeEnding } from './take-ending';
import { holdWakeLock } from './wake-lock';
import { watchDevices } from './watch-devices';

/** Which devices a take uses; null follows the system. */
export interface TakeDevices {
  readonly microphoneId: string | null;
  readonly outputId: string | null;
  /** Output index, from 0, of speakers that are not on their usual one. */
  readonly outputs: Readonly<Partial<Record<ChannelLabel, number>>>;
  /** Input the microphone sits on, 0 or 1; null: found from the sound. */
  readonly microphoneChannel: number | null;
}

/** Chromium fills its capture buffer while the context rests this long. */
const restSeconds = 0.1;
const settleSeconds = 3;
/** From the decision to start until the first frame, so that it is still ahead. */
const leadSeconds = 0.25;
/** Output and input latency together are unknown, but shorter than this. */
const latencySeconds = 2;
/** An audio clock that stands still for this long has lost its device. */
const stallSeconds = 5;

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
    const capture = await runTake(schedule, devices, { ...options, gainDb }, onLevel, ending);
    return capture ?? ending.reason ?? failed('ended too early');
  } catch (error) {
    return ending.reason ?? failed(error instanceof Error ? error.message : String(error));
  } finally {
    ending.finish();
  }
}

/** Null when the take ended before its time; `ending` knows why. */
async function runTake(
  schedule: Schedule,
  devices: TakeDevices,
  options: PlayOptions & { readonly gainDb: number },
  onLevel: (level: MicLevel) => void,
  ending: TakeEnding,
): Promise<Capture | Trouble | null> {
  const { lengthSamples, sampleRate } = schedule;
  const waitSeconds = settleSeconds + leadSeconds + latencySeconds;
  const secondsLeft = lengthSamples / sampleRate + waitSeconds;
  options.onProgress?.({ phase: 'starting', progress: 0, secondsLeft, position: 0 });
  const microphone = await ending.hold(openMicrophone(devices.microphoneId), (held) =>
    held.close(),
  );
  if (microphone === null || isTrouble(microphone)) return microphone;
  const output = await ending.hold(openOutput(devices.outputId), (opened) => opened.close());
  if (output === null || isTrouble(output)) return output;
  const { context } = output;
  const route = routeOutputs(schedule.channels, output.channels, devices.outputs);
  if (isTrouble(route)) return route;
  if (context.sampleRate !== sampleRate) return otherRate(context.sampleRate, sampleRate);

  const speakers = connectSpeakers(output, schedule, route);
  ending.atEnd(() => speakers.silence());
  const recorder = createRecorder(
    schedule,
    settleSeconds + leadSeconds,
    latencySeconds,
    options,
    onLevel,
  );
  const clockMoves = watchStall(ending);
  const listen = (message: CaptureMessage): void => {
    clockMoves();
    recorder.listen(message);
  };
  const line = await ending.hold(connectCapture(output, microphone, listen), (opened) =>
    opened.close(),
  );
  if (line === null || isTrouble(line)) return line;
  void holdWakeLock(ending);
  await ending.until(watchDevices(ending, microphone.track));
  await settle(output, ending);
  if (ending.reason) return null;

  watchOutput(ending, output);
  // Whole quarters of a second are exact both in seconds and in frames.
  const startSeconds = Math.ceil((context.currentTime + leadSeconds) * 4) / 4;
  const startsIn = startSeconds - context.currentTime;
  const startedAt = new Date(Date.now() + startsIn * 1000).toISOString();
  recorder.keepFrom(startSeconds * sampleRate);
  speakers.start(startSeconds * sampleRate, dbToAmplitude(options.gainDb));
  await ending.until(recorder.complete);
  if (ending.reason) return null;

  const { channels, gaps } = recorder.assemble();
  const channel = devices.microphoneChannel ?? chooseChannel(channels);
  const samples = channels[channel] ?? new Float32Array(0);
  const outputNames = [...route].map(([label, index]) => `${label} ${index + 1}`).join(', ');
  const notes = [
    ...microphone.notes,
    `microphone on input ${channel + 1}`,
    `rate of the take: ${sampleRate} Hz`,
    `gain: ${options.gainDb} dB`,
    `outputs: ${outputNames} of ${output.channels}`,
    ...microphone.unknown.map((what) => `not told by the browser: ${what}`),
    ...lossNotes(output, samples),
  ];
  return {
    samples,
    loopback: null,
    sampleRate,
    startedAt,
    rig: 'live',
    simulated: false,
    gaps,
    notes,
  };
}

/** Runs the context as Chromium needs it: a rest after connecting, then a while to settle. */
async function settle({ context }: Output, ending: TakeEnding): Promise<void> {
  await ending.until(context.resume());
  await ending.until(context.suspend());
  await ending.sleep(restSeconds);
  await ending.until(context.resume());
  await ending.sleep(settleSeconds);
}

function watchOutput(ending: TakeEnding, { context, native }: Output): void {
  const gone = (): void => {
    const sentence =
      'The audio output stopped during the take. Check that it is switched on and connected, then run the take again.';
    ending.end(trouble('device-gone', sentence));
  };
  ending.atEnd(native.onFailure(gone));
  context.onstatechange = () => {
    if (context.state !== 'running') gone();
  };
  ending.atEnd(() => (context.onstatechange = null));
}

/** Ends the take when nothing was heard of the audio clock for too long; returns what to call. */
function watchStall(ending: TakeEnding): () => void {
  const stalled = (): void => {
    const sentence =
      'The audio clock of this computer stands still, so nothing plays. Check that the output is connected, close other programs that use it, then run the take again.';
    ending.end(trouble('no-output', sentence));
  };
  let timer = setTimeout(stalled, stallSeconds * 1000);
  ending.atEnd(() => clearTimeout(timer));
  return () => {
    clearTimeout(timer);
    timer = setTimeout(stalled, stallSeconds * 1000);
  };
}

/** What the browser tells of audio it lost; the marks tell the rest. */
function lossNotes({ native }: Output, samples: Float32Array): string[] {
  const notes: string[] = [];
  const starved = countStarved(samples);
  if (starved > 0) notes.push(`microphone audio came late ${starved} times: silence instead`);
  const underruns = native.underruns();
  if (underruns === null) notes.push('not told by the browser: underruns of the output');
  else if (underruns.count > 0) {
    notes.push(`output ran dry ${underruns.count} times, ${underruns.seconds.toFixed(3)} s`);
  }
  return notes;
}

function otherRate(rate: number, wanted: number): Trouble {
  return trouble(
    'wrong-rate',
    `The audio output runs at ${rate / 1000} kHz and this take is written for ${wanted / 1000} kHz. Set the output to ${wanted / 1000} kHz in the system's sound settings, then run the take again.`,
  );
}

function failed(why: string): Trouble {
  return trouble(
    'failed',
    `The browser's audio failed (${why}). Reload the page and run the take again.`,
  );
}
