import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { ChannelReading } from './reading';
import { untimed } from './untimed';

/**
 * A joint in the sweep spoils what is read around the frequencies it passed there, Hz. Times always:
 * when the audio was in truth lost beside the sweep, putting it right inside moves the whole sweep.
 */
const spoils = {
  arrival: [0, 24000],
  polarity: [100, 6000],
  level: [250, 4000],
  'roll-off': [0, 700],
} as const;
/** On a sub everything is read from its one band. */
const spoilsSubHz = [0, 500] as const;

/**
 * Takes back the numbers of a mended segment that rest on the frequencies around the joint, and
 * says so. `mendedHz` is what the sweep had reached there. Common practice; ranges an octave wider
 * than the bands in use.
 */
export function withholdMended(
  reading: ChannelReading,
  mendedHz: number,
  isSub: boolean,
): ChannelReading {
  const hit = (what: keyof typeof spoils): boolean => {
    const [low, high] = isSub ? spoilsSubHz : spoils[what];
    return mendedHz >= low && mendedHz <= high;
  };
  const withheld = (Object.keys(spoils) as (keyof typeof spoils)[]).filter(hit);
  if (withheld.length === 0) return reading;
  const note = msg(
    str`No ${withheld.join(', no ')}: audio was lost or repeated where the sweep passed ${withUnit(numberText(mendedHz, 0), 'Hz')}. Repeat this segment.`,
  );
  return {
    ...reading,
    ...(hit('arrival') ? untimed : {}),
    ...(hit('polarity') ? { polarity: 'cannot tell' as const } : {}),
    ...(hit('level') ? { levelDb: null, levelInterval: null } : {}),
    ...(hit('roll-off') ? { rolloff: null, bassBands: undefined } : {}),
    notes: [...reading.notes, note],
  };
}
