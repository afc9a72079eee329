import { lengthText, lengthNumber } from '../../../src/locale/length-text';
import { stateWord } from '../../../src/locale/state-words';
import { lengthUnit, isImperial } from '../../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import type { Ground } from '../../../src/proposal/reason';
import type { ChannelReading, Estimate } from '../../../src/reading/reading';
import {
  dbText,
  hzText,
  intervalText,
  isNumber,
  millisecondsText,
  numberText,
  thinSpace,
} from '../../../src/locale/number-text';

/** A reading in words, as it was taken: what a sentence of the proposal rests on. */
export function groundText(field: Ground['field'], reading: ChannelReading | null): string {
  if (!reading) return msg('was not read.');
  switch (field) {
    case 'arrivalSeconds':
      return isNumber(reading.arrivalSeconds)
        ? msg(
            str`arrives ${millisecondsText(reading.arrivalSeconds, 2)} after the reference${between(reading.arrivalInterval, 1000, 2, 'ms')}.`,
          )
        : msg('gave no arrival.');
    case 'distanceMetres':
      return isNumber(reading.distanceMetres)
        ? msg(
            str`stands at ${lengthText(reading.distanceMetres)} by its arrival${betweenLengths(reading.distanceInterval)}.`,
          )
        : msg('gave no distance.');
    case 'levelDb':
      return isNumber(reading.levelDb)
        ? msg(
            str`reads ${dbText(reading.levelDb)} re full scale at the seat${betweenLevels(reading.levelInterval)}.`,
          )
        : msg('gave no level.');
    case 'polarity':
      return reading.polarity === 'cannot tell'
        ? msg('does not tell its polarity.')
        : msg(str`reads ${stateWord(reading.polarity)}.`);
    case 'rolloff':
      return rolloffText(reading);
    case 'distortion':
      return distortionText(reading);
    case 'bass':
      return reading.bass
        ? msg(str`had its bass captured, ${dbText(reading.bassMarginDb, 0)} over the noise.`)
        : msg('had no bass captured.');
  }
}

function rolloffText({ rolloff }: ChannelReading): string {
  if (!rolloff) return msg('gave no roll-off.');
  const { f3Hz, f6Hz, f10Hz, box } = rolloff;
  const at = (down: number, { median, interval }: Estimate) =>
    msg(str`${dbText(-down, 0)} at ${hzText(median)} (${intervalText(interval)})`);
  const kind =
    box.kind === 'cannot tell' ? msg('box cannot be told') : msg(str`${stateWord(box.kind)} box`);
  return msg(str`reads ${at(3, f3Hz)}, ${at(6, f6Hz)}, ${at(10, f10Hz)}; ${kind}.`);
}

function distortionText({ distortion }: ChannelReading): string {
  if (!distortion) return msg('has no distortion reading.');
  return distortion.kind === 'cannot tell'
    ? msg(str`has no distortion reading: ${distortion.sentence}`)
    : msg('was read from its sweep, harmonics 2 to 5, at the level it was played.');
}

function between(
  interval: readonly [number, number] | null,
  scale: number,
  digits: number,
  unit: string,
): string {
  if (!interval) return '';
  const [low, high] = interval.map((one) => numberText(one * scale, digits));
  return msg(str` (90${thinSpace}% between ${low} and ${high}${thinSpace}${unit})`);
}

/** Nothing where both ends read alike. */
function betweenLevels(interval: readonly [number, number] | null | undefined): string {
  if (!interval || numberText(interval[0], 1) === numberText(interval[1], 1)) return '';
  return between(interval, 1, 1, 'dB');
}

function betweenLengths(interval: readonly [number, number] | null): string {
  if (!interval) return '';
  const [low, high] = interval.map((one) => lengthNumber(one, isImperial() ? 3 : 2));
  return msg(str` (90${thinSpace}% between ${low} and ${high}${thinSpace}${lengthUnit()})`);
}
