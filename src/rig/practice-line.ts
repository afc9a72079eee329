import type { CapturedBlock, LineSound } from './port';
import { soundHearer } from './practice-hear';
import { openLineWorkers } from './practice-line-workers';
import { runLine } from './practice-line-clock';
import { lineSimulation } from './practice-line-sound';
import { systemIn, type PracticeRoom } from './practice-system';

/** The far end of a simulated line, wherever it is computed. */
export interface PracticeLine {
  play(sound: LineSound | null): void;
  setGain(gainDb: number): void;
  /** Nothing is called back afterwards. */
  close(): void;
}

export interface PracticeLineListeners {
  readonly onBlock: (block: CapturedBlock) => void;
  /** The computation failed; the line is closed already. */
  readonly onFailed: (why: string) => void;
}

/**
 * Opens a simulated line beside the page: in workers where there are workers, else here. Rejects
 * when it cannot start.
 */
export function openPracticeLine(
  room: PracticeRoom,
  speed: number,
  listeners: PracticeLineListeners,
): Promise<PracticeLine> {
  return typeof Worker === 'undefined'
    ? Promise.resolve(openHere(room, speed, listeners))
    : openLineWorkers(room, speed, listeners);
}

function openHere(
  room: PracticeRoom,
  speed: number,
  { onBlock }: PracticeLineListeners,
): PracticeLine {
  const system = systemIn(room);
  const hear = soundHearer(system, room.faults);
  const simulation = lineSimulation(system, room);
  return {
    play: (sound) => simulation.play(sound && hear(sound)),
    setGain: (gainDb) => simulation.setGain(gainDb),
    close: runLine(simulation, speed, onBlock),
  };
}
