import { msg, str } from '@lit/localize';
import { trustedMarginDb } from '../../../src/reading/noise-floor-margins';
import { rateNoiseFloor } from '../../../src/reading/noise-floor-rating';
import type { CaptureReading, ChannelReading } from '../../../src/reading/reading';
import { listInWords } from '../../../src/system/list-in-words';
import type { NoiseRating } from '../../../dsp/level/noise-curves';
import { hzText, numberText, thinSpace } from '../../../src/locale/number-text';

/** Nominal midpoints of octave bands, as they are told. */
export function bandText(hz: number): string {
  const nominal = nominalHz(hz);
  return Number.isInteger(nominal) ? hzText(nominal) : `${numberText(nominal, 1)}${thinSpace}Hz`;
}

/** The nominal midpoint of IEC 61260-1 next to an exact one, Hz. */
export function nominalHz(hz: number): number {
  const nominal = [16, 31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000, 16000];
  return nominal.reduce((best, one) =>
    Math.abs(Math.log(one / hz)) < Math.abs(Math.log(best / hz)) ? one : best,
  );
}

/** The noise floor as a sentence: rated where the sound level is known, else re full scale. */
export function noiseFloorWords(
  { noise, noiseFloorDb }: CaptureReading,
  offsetDb: number | null,
): string {
  const rated = noise && offsetDb !== null ? rateNoiseFloor(noise, offsetDb) : null;
  if (rated) {
    const { criterion, rating } = rated;
    const decides = msg(str`${bandText(criterion.decidedByHz)} decides`);
    return msg(
      str`The noise floor is ${ratingText('NC', criterion)} and ${ratingText('NR', rating)}; ${decides}.`,
    );
  }
  const level = `${numberText(noiseFloorDb, 1)}${thinSpace}dBFS`;
  return msg(str`The noise floor is ${level}. ${howToRate(noise, offsetDb)}`);
}

/** The one thing that lets a noise floor be rated that is not. */
function howToRate(noise: CaptureReading['noise'], offsetDb: number | null): string {
  if (noise === null) {
    return msg(
      'The capture holds too little silence to rate it: start the recording before the take.',
    );
  }
  return offsetDb === null
    ? msg('Calibrate the sound level to have it as NC and NR.')
    : msg('Its bands are not all known: repeat the take to have it as NC and NR.');
}

function ratingText(name: string, { rating, isBelow }: NoiseRating): string {
  if (rating === null) return msg(str`over every ${name} curve`);
  return `${isBelow ? 'under ' : ''}${name}${thinSpace}${numberText(rating)}`;
}

/** Bands that do not stand 10 dB over the noise, speaker by speaker, as a sentence. */
export function hiddenBandsWords(channels: readonly ChannelReading[]): string {
  const hidden = channels.flatMap(({ channel, margins }) => {
    if (!margins) return [];
    const bands = margins.hz.filter((_, k) => (margins.marginDb[k] ?? 0) < trustedMarginDb);
    return bands.length === 0 ? [] : [msg(str`${channel} at ${listInWords(bands.map(bandText))}`)];
  });
  const limit = `${trustedMarginDb}${thinSpace}dB`;
  if (hidden.length === 0)
    return msg(str`Every band of every speaker stands ${limit} or more over it.`);
  return msg(str`Less than ${limit} over it, and not to be trusted there: ${hidden.join('; ')}.`);
}
