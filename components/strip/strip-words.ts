import type { BenchState } from '../../src/session/bench';
import type { PlayProgress } from '../../src/rig/port';

/** What sounds now, in a few words. */
export function soundInWords(state: BenchState): string {
  const { activity } = state;
  switch (activity.kind) {
    case 'idle':
      return 'Nothing is playing';
    case 'reading':
      return 'Reading the take, nothing is playing';
    case 'playing': {
      const simulated = state.document.rig === 'practice' ? ', simulated' : '';
      return `${playInWords(activity.play.phase, activity.channel)}${simulated}`;
    }
  }
}

function playInWords(phase: PlayProgress['phase'], channel: string | null): string {
  switch (phase) {
    case 'starting':
      return 'Starting the take';
    case 'settling':
      return 'Waking the outputs';
    case 'playing':
      return channel === null ? 'Listening to the quiet room' : `Playing ${channel}`;
    case 'finishing':
      return 'Ending the take';
  }
}

/** Seconds still to go, or null when nothing runs or nobody can tell. */
export function secondsLeft(state: BenchState): number | null {
  const { activity } = state;
  if (activity.kind === 'playing') return activity.play.secondsLeft;
  return activity.kind === 'reading' ? activity.secondsLeft : null;
}

/** Whether everything so far outlives the page. */
export function savedInWords(saved: BenchState['saved']): string {
  return {
    saved: 'Saved in this browser',
    saving: 'Saving',
    failed: 'Not saved',
    elsewhere: 'Open in another tab',
  }[saved];
}
