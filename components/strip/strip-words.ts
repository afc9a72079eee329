import { msg, str } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import type { PlayProgress } from '../../src/rig/port';
import type { SoundLevel } from '../../src/soundlevel/sound-level';

/** What sounds now, in a few words. */
export function soundInWords(state: BenchState): string {
  const { activity } = state;
  const simulated = state.document.rig === 'practice' ? msg(', simulated') : '';
  switch (activity.kind) {
    case 'idle':
      return msg('Nothing is playing');
    case 'reading':
      return msg('Reading the take, nothing is playing');
    case 'waiting':
      return msg('Waiting for you');
    case 'walking': {
      const where = activity.at === 'seat' ? msg('at the seat') : msg(str`at ${activity.at}`);
      return msg(
        str`${activity.channel === null ? msg('A stop') : msg(str`Playing ${activity.channel}`)}, heard ${where}${simulated}`,
      );
    }
    case 'playing':
      return `${playInWords(activity.play.phase, activity.channel)}${simulated}`;
    case 'noise': {
      const { kind, channel } = activity.noise.request;
      return kind === 'noise'
        ? msg(str`Pink noise on ${channel}${simulated}`)
        : msg(str`Listening to ${channel}, nothing is played from here`);
    }
    case 'climbing':
      return msg(str`Climbing to a test level${simulated}`);
  }
}

function playInWords(phase: PlayProgress['phase'], channel: string | null): string {
  switch (phase) {
    case 'starting':
      return msg('Starting the take');
    case 'settling':
      return msg('Waking the outputs');
    case 'playing':
      return channel === null ? msg('Listening to the quiet room') : msg(str`Playing ${channel}`);
    case 'finishing':
      return msg('Ending the take');
  }
}

/** Seconds still to go, or null when nothing runs or nobody can tell. */
export function secondsLeft(state: BenchState): number | null {
  const { activity } = state;
  switch (activity.kind) {
    case 'playing':
    case 'walking':
      return activity.play.secondsLeft;
    case 'reading':
      return activity.secondsLeft;
    case 'climbing':
      return activity.climb.secondsLeft;
    case 'noise':
      return activity.noise.complete ? null : activity.noise.secondsLeft;
    case 'waiting':
    case 'idle':
      return null;
  }
}

/** Whether this computer may be making sound now. */
export function isSounding({ activity }: BenchState): boolean {
  switch (activity.kind) {
    case 'playing':
    case 'walking':
    case 'climbing':
      return true;
    case 'noise':
      return activity.noise.request.kind === 'noise';
    case 'idle':
    case 'waiting':
    case 'reading':
      return false;
  }
}

/** Part n of m, where a position needs more than one take; else null. */
export function partInWords({ activity }: BenchState): string | null {
  if (activity.kind !== 'playing' || activity.part.of < 2) return null;
  return msg(str`take ${activity.part.number} of ${activity.part.of}`);
}

/** Unit of a sound level with its weighting, as a meter prints it. */
export function soundLevelUnit({ calibrated, weighting }: SoundLevel): string {
  return calibrated ? `dB(${weighting})` : `dBFS, ${weighting}`;
}

/** Whether everything so far outlives the page. */
export function savedInWords(saved: BenchState['saved']): string {
  return {
    saved: msg('Saved in this browser'),
    saving: msg('Saving'),
    failed: msg('Not saved'),
    elsewhere: msg('Follows another tab'),
  }[saved];
}
