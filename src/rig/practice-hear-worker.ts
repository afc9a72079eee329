import '../locale/hear-locale';
import type { LineSound } from './port';
import { soundHearer, type HeardSound } from './practice-hear';
import { systemIn, type PracticeRoom } from './practice-system';

/** What the page sends: first the room, then sounds. */
export type HearOrder =
  | { readonly kind: 'room'; readonly room: PracticeRoom }
  | { readonly kind: 'hear'; readonly sound: LineSound };

/** What the worker answers to every sound. */
export type HearAnswer =
  | { readonly kind: 'heard'; readonly sound: HeardSound }
  | { readonly kind: 'failed'; readonly why: string };

let hear: ((sound: LineSound) => HeardSound) | null = null;

self.onmessage = ({ data }: MessageEvent<HearOrder>): void => {
  const answer = (message: HearAnswer): void => self.postMessage(message);
  try {
    if (data.kind === 'hear') {
      const sound = hear?.(data.sound);
      if (sound) answer({ kind: 'heard', sound });
      return;
    }
    hear = soundHearer(systemIn(data.room), data.room.faults);
  } catch (error) {
    answer({ kind: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
};
