import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../trouble';
import type { CapturedBlock, Line, LineOptions, LineSound, MicLevel } from './port';
import { practiceRate } from './practice-clock';
import { openPracticeLine } from './practice-line';
import type { PracticeRoom } from './practice-system';

/** Facts for the record of everything that a practice room gives. */
export function practiceNotes(seed: number): string[] {
  return [msg(str`Simulated: practice room ${seed}.`), msg('microphone: simulated')];
}

/** Opens a line into a practice room; `onLevel` hears the level of every block. */
export async function openLine(
  room: PracticeRoom,
  speed: number,
  { signal, onBlock, onEnd }: LineOptions,
  onLevel: (level: MicLevel) => void,
): Promise<Line | Trouble> {
  if (signal.aborted) return stopped();
  let open = true;
  try {
    const line = await openPracticeLine(room, speed, {
      onBlock(block) {
        if (!open) return;
        onBlock(block);
        if (open) onLevel(levelOf(block, room.faults.clipLevel ?? 1));
      },
      onFailed(why) {
        if (open) onEnd(failed(why));
        open = false;
      },
    });
    const close = (): void => {
      open = false;
      line.close();
      signal.removeEventListener('abort', close);
    };
    if (signal.aborted) {
      close();
      return stopped();
    }
    signal.addEventListener('abort', close);
    return {
      sampleRate: practiceRate,
      simulated: true,
      notes: practiceNotes(room.seed),
      unknown: [],
      play(sound) {
        if (sound) requireSound(sound, room);
        if (open) line.play(sound);
      },
      setGain(gainDb) {
        requireGain(gainDb);
        if (open) line.setGain(gainDb);
      },
      close,
    };
  } catch (error) {
    return failed(error instanceof Error ? error.message : String(error));
  }
}

function requireSound({ channel, period, gainDb }: LineSound, { layout }: PracticeRoom): void {
  if (!layout.channels.some(({ label }) => label === channel)) {
    throw new RangeError(`layout ${layout.name} has no speaker ${channel}`);
  }
  if (period.length === 0) throw new RangeError('a period must have samples, got 0');
  requireGain(gainDb);
}

function requireGain(gainDb: number): void {
  if (!(gainDb <= 0)) throw new RangeError(`gainDb must be at most 0, got ${gainDb}`);
}

function levelOf({ samples }: CapturedBlock, limit: number): MicLevel {
  let power = 0;
  let peak = 0;
  for (const value of samples) {
    power += value * value;
    peak = Math.max(peak, Math.abs(value));
  }
  const decibels = (value: number): number => 20 * Math.log10(Math.max(value, 1e-10));
  const rms = Math.sqrt(power / samples.length);
  return { rmsDb: decibels(rms), peakDb: decibels(peak), clipped: peak >= limit };
}

function stopped(): Trouble {
  return trouble('stopped', msg('The line to the practice room was closed before it was open.'));
}

function failed(why: string): Trouble {
  return trouble('failed', msg(str`The practice room failed (${why}). Reload and try again.`));
}
