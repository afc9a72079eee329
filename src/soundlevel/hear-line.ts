import { msg, str } from '@lit/localize';
import type { Line, OutputRoutes, Rig } from '../rig/port';
import { isTrouble, trouble, type Trouble } from '../trouble';

/** An open line whose sound is asked for stretch by stretch. */
export interface Ear {
  readonly line: Line;
  /** The next unbroken stretch of that many samples; a stretch that lost audio starts over. */
  hear(samples: number): Promise<Float64Array | Trouble>;
  /** How often audio was lost so far. */
  gaps(): number;
  /** Silence now. */
  close(): void;
}

/** No audio for so long means that none comes any more. */
const patienceMs = 8000;
/** Sound nobody asked for is kept this long. */
const keptSeconds = 10;

/**
 * Opens a line to listen to. An abort closes it at once; whoever hears then gets a Trouble of kind
 * 'stopped'. So does the line's own end, with its own Trouble. Samples that are not finite count
 * as silence.
 */
export async function openEar(
  rig: Rig,
  options: { readonly signal: AbortSignal; readonly routes?: OutputRoutes },
): Promise<Ear | Trouble> {
  const { signal, routes } = options;
  const queue = createQueue();
  const end = (why: Trouble): void => queue.end(why);
  const line = await rig.open({
    signal,
    ...(routes ? { routes } : {}),
    onBlock: ({ frame, samples }) => queue.add(frame, samples),
    onEnd: end,
  });
  if (isTrouble(line)) return line;
  const stop = (): void => {
    line.close();
    end(stopped());
  };
  const close = (): void => {
    signal.removeEventListener('abort', stop);
    stop();
  };
  signal.addEventListener('abort', stop, { once: true });
  if (signal.aborted) stop();
  const { sampleRate } = line;
  if (!(sampleRate >= 44_100 && sampleRate <= 384_000)) {
    close();
    return trouble(
      'wrong-rate',
      msg(
        str`The microphone runs at ${sampleRate} Hz; levels need 44100 Hz or more. Set its rate in the system.`,
      ),
    );
  }
  queue.keep(keptSeconds * sampleRate);
  return { line, hear: (samples) => queue.take(samples), gaps: () => queue.gaps(), close };
}

const stopped = () => trouble('stopped', msg('Stopped.'));
const mute = () =>
  trouble(
    'device-gone',
    msg('No sound comes from the microphone any more. Plug it in again and start again.'),
  );

interface Queue {
  add(frame: number, samples: Float32Array): void;
  take(samples: number): Promise<Float64Array | Trouble>;
  keep(samples: number): void;
  gaps(): number;
  end(why: Trouble): void;
}

function createQueue(): Queue {
  let blocks: Float32Array[] = [];
  let held = 0;
  let gaps = 0;
  let most = Infinity;
  let nextFrame: number | null = null;
  let ended: Trouble | null = null;
  let wanted: { samples: number; give: (heard: Float64Array | Trouble) => void } | null = null;
  let patience: ReturnType<typeof setTimeout> | null = null;

  const give = (heard: Float64Array | Trouble): void => {
    if (patience !== null) clearTimeout(patience);
    patience = null;
    const asker = wanted;
    wanted = null;
    asker?.give(heard);
  };
  const wait = (): void => {
    if (patience !== null) clearTimeout(patience);
    patience = setTimeout(() => give(mute()), patienceMs);
  };
  const serve = (): void => {
    if (!wanted) return;
    if (ended) give(ended);
    else if (held >= wanted.samples) {
      const heard = new Float64Array(wanted.samples);
      held -= takeFrom(blocks, heard);
      give(heard);
    } else wait();
  };
  return {
    add: (frame, samples) => {
      if (ended) return;
      if (nextFrame !== null && frame !== nextFrame) {
        gaps++;
        [blocks, held] = [[], 0];
      }
      nextFrame = frame + samples.length;
      blocks.push(samples);
      held += samples.length;
      while (held > most && blocks.length > 1) held -= blocks.shift()?.length ?? 0;
      serve();
    },
    take: (samples) =>
      new Promise((resolve) => {
        wanted = { samples, give: resolve };
        serve();
      }),
    keep: (samples) => {
      most = samples;
    },
    gaps: () => gaps,
    end: (why) => {
      ended ??= why;
      [blocks, held] = [[], 0];
      serve();
    },
  };
}

/** Moves samples from the blocks, oldest first, until `into` is full; returns how many. */
function takeFrom(blocks: Float32Array[], into: Float64Array): number {
  let at = 0;
  while (at < into.length) {
    const block = blocks.shift();
    if (!block) break;
    const part = block.subarray(0, into.length - at);
    for (let n = 0; n < part.length; n++) {
      const x = part[n] ?? 0;
      into[at + n] = Number.isFinite(x) ? x : 0;
    }
    at += part.length;
    if (part.length < block.length) blocks.unshift(block.subarray(part.length));
  }
  return at;
}
