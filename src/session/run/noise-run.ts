import { msg } from '@lit/localize';
import { breathe } from '../../breathe';
import type { NoiseRequest } from '../../noise/noise-state';
import { runNoise } from '../../noise/run-noise';
import type { Rig } from '../../rig/port';
import type { ChannelLabel, Layout } from '../../system/channel';
import { isTrouble, type Trouble } from '../../trouble';
import { withRig, type BenchRoom } from './bench-room';
import { exposeLine } from './expose';
import { noReadingYet } from './no-reading-yet';
import { routesFor } from './routes-for';
import { soundLevelHere } from './sound-level-here';
import { withNoiseReading } from '../take-record';

/** Live noise, or listening, as the bench runs it. */
export interface NoiseRun {
  start(request: NoiseRequest, signal: AbortSignal): Promise<Trouble | null>;
  /** Of no effect when no noise runs. */
  change(request: NoiseRequest): void;
  keep(): void;
}

type Running = ReturnType<typeof runNoise> & {
  /** Whether this line can change over to a speaker: of the same kind, and on an output now. */
  reaches(label: ChannelLabel): boolean;
  /** Ends this line so that the next one opens. */
  again(): void;
};

export function createNoiseRun(room: BenchRoom): NoiseRun {
  const { desk } = room;
  let running: Running | null = null;
  /** The request that the next line opens with; null once it has. */
  let wanted: NoiseRequest | null = null;
  let open = false;

  /** Never above the gain the session allows. */
  function capped(request: NoiseRequest): NoiseRequest {
    const gainDb = Math.min(request.gainDb, desk.state.document.live.capDb);
    return { ...request, gainDb };
  }

  function start(first: NoiseRequest, signal: AbortSignal): Promise<Trouble | null> {
    wanted = capped(first);
    open = true;
    return withRig(room, async (rig) => {
      // A sub is analysed otherwise than a main speaker, and some speakers need a plug moved first.
      while (wanted && !signal.aborted) {
        const problem = await runOnce(rig, wanted.channel, signal);
        const meant = problem?.trouble === 'stopped' && (wanted !== null || signal.aborted);
        if (problem && !meant) return problem;
      }
      return null;
    }).finally(() => (open = false));
  }

  async function runOnce(
    rig: Rig,
    channel: ChannelLabel,
    signal: AbortSignal,
  ): Promise<Trouble | null> {
    const routes = await routesFor(room, rig, channel, signal);
    await breathe();
    if (isTrouble(routes) || wanted === null) return isTrouble(routes) ? routes : null;
    if (wanted.channel !== channel) return null;
    const request = wanted;
    wanted = null;
    const { document, layout } = desk.state;
    const soundLevel = rig.simulated ? null : soundLevelHere(document);
    const isSub = isSubOf(layout, request.channel);
    const placed = Object.keys(routes).length > 0;
    const again = new AbortController();
    const run = runNoise(rig, request, {
      signal: AbortSignal.any([signal, again.signal]),
      positionId: document.position.id,
      newId: () => desk.parts.newId(),
      now: () => desk.parts.now(),
      isSub,
      calibration: rig.simulated ? null : document.microphone.calibration,
      soundLevel,
      routes,
      onState: (noise) => {
        const soundLevel = room.meter.read() ?? noise.soundLevel;
        desk.set({ activity: { kind: 'noise', noise: { ...noise, soundLevel } } });
      },
      onLevel: exposeLine(desk, rig, soundLevel),
    });
    running = {
      ...run,
      reaches: (label) => isSubOf(layout, label) === isSub && (label in routes || !placed),
      again: () => again.abort(),
    };
    try {
      return await run.finished;
    } finally {
      running = null;
    }
  }

  return {
    start,
    change(next) {
      if (!open) return;
      const request = capped(next);
      if (running?.reaches(request.channel)) return running.change(request);
      wanted = request;
      running?.again();
    },
    keep() {
      const reading = running?.reading() ?? null;
      if (reading === null) return desk.raise(noReadingYet());
      desk.change((document) => withNoiseReading(document, reading), msg('Keep noise reading'));
    },
  };
}

function isSubOf(layout: Layout, label: ChannelLabel): boolean {
  return layout.channels.some((channel) => channel.label === label && channel.kind === 'sub');
}
