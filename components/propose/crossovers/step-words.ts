import { numberText } from '../../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import type { BrokenLimit, CrossoverAlternative } from '../../../src/proposal/proposal';

const limits: Readonly<Record<BrokenLimit, string>> = {
  get 'roll-off'() {
    return msg('under the measured rule');
  },
  get distortion() {
    return msg('distorts');
  },
  get compression() {
    return msg('compresses');
  },
  get 'sub reach'() {
    return msg('over the subs’ reach');
  },
};

/** What speaks for and against a step, in a few words. */
export function stepNotes({
  practice,
  measured,
  breaks,
  localised,
}: Pick<CrossoverAlternative, 'practice' | 'measured' | 'breaks' | 'localised'>): string {
  const rules =
    practice && measured
      ? [msg('both rules')]
      : measured
        ? [msg('measured')]
        : practice
          ? [msg('practice')]
          : [];
  const place = localised ? [msg('sub heard')] : [];
  return [...rules, ...breaks.map((limit) => limits[limit]), ...place].join(', ');
}

/** What the columns of the table of steps mean. */
export const stepsRule = () =>
  msg(
    str`Over −3 dB: how far the step lies above the highest −3 dB point of the group. The measured rule rests on the −6 dB point instead, so that a step may lie over the one and under the other. Dip and lost: of the sum with the subs, against both in phase, from half an octave below the step to half an octave above, all seats together, the subs aligned anew for each step of the first group and as it has them for the others. Practice takes the first step at or above the −3 dB point plus 10 Hz (common practice, no source). Measured takes the first at or above ${numberText(1.25, 2)} times the 85 % quantile of the −6 dB point, and above where distortion or compression sets in. Of the steps that break nothing the one is proposed whose sum loses least, an octave more counting as ${numberText(0.1, 1)} dB, an octave above 120 Hz as 1 dB more in front and as 2 dB more for sides and backs, and a delay of the subs far from where the direct sounds line up counting as well. Sub heard: above 120 Hz a sub begins to be heard where it stands.`,
  );
