import type { Weighting } from '../../../dsp/level/weighting';
import type { Rig } from '../../rig/port';
import type { SoundLevel } from '../../soundlevel/sound-level';
import { createSoundLevelMeter, type SoundLevelMeter } from '../../soundlevel/sound-level-meter';
import type { Desk } from '../desk';
import { isTrouble } from '../../trouble';
import { soundLevelHere } from './sound-level-here';

/** The sound level meter on the desk: reads whatever microphone is open. */
export interface MeterDesk {
  set(weighting: Weighting, time: 'fast' | 'slow'): void;
  /** The rig with the meter listening to its lines. */
  over(rig: Rig): Rig;
  /** What the open line sounds like; null when none is open. */
  read(): SoundLevel | null;
  /** Shows levels of the rig while it runs; returns the way to end that. */
  watch(rig: Rig): () => void;
}

export function createMeterDesk(desk: Desk): MeterDesk {
  let how: { weighting: Weighting; time: 'fast' | 'slow' } = { weighting: 'A', time: 'slow' };
  let meter: SoundLevelMeter | null = null;
  return {
    set(weighting, time) {
      how = { weighting, time };
      meter?.set(weighting, time);
    },
    read: () => meter?.read() ?? null,
    over: (rig) => ({
      ...rig,
      async open(options) {
        let own: SoundLevelMeter | null = null;
        const line = await rig.open({
          ...options,
          onBlock(block) {
            own?.push(block.samples);
            options.onBlock(block);
          },
        });
        if (isTrouble(line)) return line;
        const soundLevel = rig.simulated ? null : soundLevelHere(desk.state.document);
        own = createSoundLevelMeter(line.sampleRate, soundLevel);
        own.set(how.weighting, how.time);
        meter = own;
        return line;
      },
    }),
    watch(rig) {
      const quiet = rig.monitor((mic) => desk.set({ mic, soundLevel: meter?.read() ?? null }));
      return () => {
        quiet();
        meter = null;
      };
    },
  };
}
