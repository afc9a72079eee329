import { msg } from '@lit/localize';
import { withLocale } from '../locale/with-locale';
import type { LineSound } from './port';
import type { HearAnswer, HearOrder } from './practice-hear-worker';
import type { PracticeLine, PracticeLineListeners } from './practice-line';
import type { LineAnswer, LineOrder } from './practice-line-worker';
import type { PracticeRoom } from './practice-system';

/**
 * A simulated line in two workers: one gives blocks in time, the other takes its while over what a
 * new sound becomes in the room. What played falls silent at once, the new sound follows.
 */
export function openLineWorkers(
  room: PracticeRoom,
  speed: number,
  { onBlock, onFailed }: PracticeLineListeners,
): Promise<PracticeLine> {
  return new Promise((resolve, reject) => {
    const clock = withLocale(
      new Worker(new URL('./practice-line-worker.ts', import.meta.url), {
        type: 'module',
      }),
    );
    const hearing = withLocale(
      new Worker(new URL('./practice-hear-worker.ts', import.meta.url), {
        type: 'module',
      }),
    );
    const tellClock = (order: LineOrder): void => clock.postMessage(order);
    const tellHearing = (order: HearOrder): void => hearing.postMessage(order);
    let closed = false;
    let opened = false;
    /** The sound that is wanted, and the one that is being computed. */
    let wanted: LineSound | null = null;
    let computed: LineSound | null = null;

    const hearWanted = (): void => {
      if (computed || !wanted) return;
      computed = wanted;
      tellHearing({ kind: 'hear', sound: wanted });
    };
    const line: PracticeLine = {
      play(sound) {
        wanted = sound;
        tellClock({ kind: 'play', sound: null });
        hearWanted();
      },
      setGain(gainDb) {
        if (wanted && wanted === computed) wanted = computed = { ...wanted, gainDb };
        else if (wanted) wanted = { ...wanted, gainDb };
        tellClock({ kind: 'gain', gainDb });
      },
      close() {
        closed = true;
        clock.terminate();
        hearing.terminate();
      },
    };
    const fail = (why: string): void => {
      if (closed) return;
      line.close();
      if (opened) onFailed(why);
      else reject(new Error(why));
    };
    clock.onmessage = ({ data }: MessageEvent<LineAnswer>) => {
      if (closed) return;
      if (data.kind === 'failed') return fail(data.why);
      if (data.kind === 'block') return onBlock(data.block);
      opened = true;
      resolve(line);
    };
    hearing.onmessage = ({ data }: MessageEvent<HearAnswer>) => {
      if (closed) return;
      if (data.kind === 'failed') return fail(data.why);
      const current = wanted && wanted === computed ? wanted : null;
      computed = null;
      if (!current) return hearWanted();
      wanted = null;
      tellClock({ kind: 'play', sound: { ...data.sound, gainDb: current.gainDb } });
    };
    for (const worker of [clock, hearing]) {
      worker.onerror = (event) => {
        event.preventDefault();
        fail(event.message || msg('its worker could not start'));
      };
    }
    tellHearing({ kind: 'room', room });
    tellClock({ kind: 'open', room, speed });
  });
}
