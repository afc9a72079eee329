import { msg, str } from '@lit/localize';
import { breathe } from '../breathe';
import type { MicrophoneCalibration, SoundLevelCalibration } from '../microphone/calibration';
import type { Line, OutputRoutes, Rig } from '../rig/port';
import type { SoundLevel } from '../soundlevel/sound-level';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { checkNoiseRequest } from './check-noise-request';
import { noiseInWorker } from './noise-in-worker';
import type { NoiseAnswer, NoiseNews } from './noise-orders';
import type { NoiseReading, NoiseRequest, NoiseState } from './noise-state';

export interface NoiseOptions {
  readonly signal: AbortSignal;
  readonly positionId: string;
  newId(): string;
  /** ISO 8601. */
  now(): string;
  /** Of every speaker this run will play; a change between main and sub needs a new run. */
  readonly isSub: boolean;
  readonly calibration: MicrophoneCalibration | null;
  readonly soundLevel: SoundLevelCalibration | null;
  readonly routes: OutputRoutes;
  onState(state: NoiseState): void;
  /** Mean A-weighted level of each stretch heard, dB re full scale, for exposure. */
  onLevel?(aWeightedDb: number, seconds: number): void;
}

export interface NoiseRun {
  /** Settles when the noise has ended: null never, as noise sounds until something ends it. */
  readonly finished: Promise<Trouble | null>;
  /** Other speaker, band, gain, averaging or resolution; a request that cannot be met only warns. */
  change(request: NoiseRequest): void;
  /** What has been read so far; null until two whole periods were heard. */
  reading(): NoiseReading | null;
}

const stopped = () => trouble('stopped', msg('The noise was stopped.'));
const leastRate = 44_100;

/**
 * Plays pink noise on one speaker, or listens, until the signal is aborted or the line ends; tells
 * about eight times a second what is heard. Analysis runs in a worker. Never throws for what the
 * world does.
 */
export function runNoise(rig: Rig, first: NoiseRequest, options: NoiseOptions): NoiseRun {
  let request = first;
  let line: Line | null = null;
  let run = 0;
  let waitsForPeriod = false;
  let nextFrame: number | null = null;
  let news: NoiseNews = nothingYet(first);
  let soundLevel: SoundLevel | null = null;
  let identity: Pick<NoiseReading, 'id' | 'startedAt'> | null = null;
  let refusal: string | null = null;
  let ended = false;
  let finish: (why: Trouble) => void = () => undefined;
  const finished = new Promise<Trouble | null>((resolve) => {
    finish = (why) => {
      if (ended) return;
      ended = true;
      options.signal.removeEventListener('abort', abort);
      line?.close();
      help.end();
      resolve(why);
    };
  });
  const abort = (): void => finish(stopped());

  const reading = (): NoiseReading | null => {
    const { numbers } = news;
    if (!numbers || !line || !identity) return null;
    const { kind, channel, lowHz, highHz } = request;
    return {
      ...identity,
      positionId: options.positionId,
      kind,
      channel,
      rig: rig.kind,
      simulated: rig.simulated,
      lowHz,
      highHz,
      ...numbers,
      notes: [...numbers.notes, ...news.warnings, ...line.notes],
    };
  };
  const tell = (): void => {
    if (ended) return;
    const { seconds, secondsLeft, complete, spectrum, bandLevelDb } = news;
    options.onState({
      request,
      seconds,
      secondsLeft,
      complete,
      spectrum,
      bandLevelDb,
      soundLevel,
      reading: reading(),
      warnings: refusal === null ? news.warnings : [refusal, ...news.warnings],
    });
  };
  const begin = (): void => {
    help.order({ kind: 'begin', request, run });
    tell();
  };
  const hear = (answer: NoiseAnswer): void => {
    if (ended) return;
    if (answer.kind === 'failed') {
      return finish(
        trouble('failed', msg(str`The noise failed: ${answer.why}. Reload and start again.`)),
      );
    }
    if (answer.run !== run) return;
    if (answer.kind === 'period') {
      waitsForPeriod = false;
      const { channel, gainDb } = request;
      line?.play({ channel, period: answer.period, gainDb });
      return begin();
    }
    ({ news, soundLevel } = answer);
    if (answer.heardSeconds > 0) options.onLevel?.(answer.aWeightedDb, answer.heardSeconds);
    tell();
  };
  const help = noiseInWorker(hear);

  /** A new average: other sound, or another speaker. */
  const restart = (): void => {
    run++;
    news = nothingYet(request);
    identity = { id: options.newId(), startedAt: options.now() };
    if (request.kind === 'listening') {
      waitsForPeriod = false;
      line?.play(null);
      return begin();
    }
    waitsForPeriod = true;
    tell();
    help.order({ kind: 'render', lowHz: request.lowHz, highHz: request.highHz, run });
  };
  const start = async (): Promise<void> => {
    const refused = checkNoiseRequest(first);
    if (refused) return finish(refused);
    const { signal, routes, isSub, calibration } = options;
    if (signal.aborted) return finish(stopped());
    signal.addEventListener('abort', abort);
    const opened = await rig.open({
      signal,
      routes,
      onBlock: ({ frame, samples }) => {
        if (ended) return;
        if (nextFrame !== null && frame !== nextFrame) {
          help.order({ kind: 'gap', frames: Math.max(Math.round(frame - nextFrame), 0) });
        }
        nextFrame = frame + samples.length;
        help.order({ kind: 'block', samples });
      },
      onEnd: (why) => finish(options.signal.aborted ? stopped() : why),
    });
    if (isTrouble(opened)) return finish(opened);
    // What shows the noise is drawn for the first time after this: a task of its own.
    await breathe();
    if (ended) return opened.close();
    line = opened;
    const { sampleRate } = opened;
    if (sampleRate < leastRate) {
      const said = msg(
        str`The microphone runs at ${sampleRate} Hz; noise needs ${leastRate} Hz or more. Set its rate in the system.`,
      );
      return finish(trouble('wrong-rate', said));
    }
    const problem = checkNoiseRequest(request, sampleRate);
    if (problem) return finish(problem);
    help.order({
      kind: 'open',
      setting: { sampleRate, isSub, calibration, soundLevel: options.soundLevel },
    });
    restart();
  };
  start().catch((error: unknown) => {
    const why = error instanceof Error ? error.message : String(error);
    finish(trouble('failed', msg(str`The noise failed: ${why}. Reload and start again.`)));
  });

  return {
    finished,
    reading,
    change(next) {
      if (ended) return;
      const refused = checkNoiseRequest(next, line?.sampleRate);
      refusal = refused?.sentence ?? null;
      if (refused) return tell();
      const old = request;
      request = next;
      if (!line) return;
      if (soundsOther(old, next)) return restart();
      // Until the new sound begins, it takes its gain and everything else from the request.
      if (waitsForPeriod) return tell();
      if (old.gainDb !== next.gainDb && next.kind === 'noise') {
        line.setGain(next.gainDb);
        help.order({ kind: 'gain', gainDb: next.gainDb });
      }
      help.order({ kind: 'show', request: next });
    },
  };
}

function soundsOther(old: NoiseRequest, next: NoiseRequest): boolean {
  return (
    old.kind !== next.kind ||
    old.channel !== next.channel ||
    old.lowHz !== next.lowHz ||
    old.highHz !== next.highHz
  );
}

function nothingYet({ averagingSeconds }: NoiseRequest): NoiseNews {
  return {
    seconds: 0,
    secondsLeft: averagingSeconds,
    complete: false,
    spectrum: null,
    bandLevelDb: null,
    numbers: null,
    warnings: [],
  };
}
