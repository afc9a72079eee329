import { numberText, withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { PeriodProgress } from '../../dsp/noise/period-analyser';
import type { PeriodReading } from '../../dsp/noise/period-reading';
import type { NoiseRequest } from './noise-state';

/** Noise that stands less than this over the room is hard to read, dB. */
const leastMarginDb = 10;

/** What is to be said of live noise. */
export function periodWarnings(
  progress: PeriodProgress,
  reading: PeriodReading | null,
  clipped: boolean,
  { channel }: NoiseRequest,
): string[] {
  const said: string[] = [];
  if (clipped) {
    said.push(msg('The microphone clips. Turn its gain or the noise down, then start again.'));
  }
  if (progress.lost > 0) {
    said.push(
      msg(
        str`Audio was lost ${times(progress.lost)}; the periods it fell in are left out of the average.`,
      ),
    );
  }
  if (progress.disturbed > 0) {
    said.push(
      msg(
        str`Something else was heard ${times(progress.disturbed)}; those periods are left out of the average.`,
      ),
    );
  }
  if (progress.renewed > 0) {
    said.push(
      msg(
        'What the microphone hears has changed, its place, its gain or the room: the average began anew.',
      ),
    );
  }
  if (reading) said.push(...marginWarnings(reading, channel));
  return said;
}

function marginWarnings({ heard, hiss }: PeriodReading, channel: string): string[] {
  const sum = (power: Float64Array): number => power.reduce((total, one) => total + one, 0);
  const [signal, noise] = [sum(heard.power), sum(hiss.power)];
  if (!(signal > 0)) return [silent(channel)];
  if (!(noise > 0)) return [];
  const marginDb = 10 * Math.log10(signal / noise);
  if (marginDb < -10) return [silent(channel)];
  if (marginDb >= leastMarginDb) return [];
  return [
    msg(
      str`The noise stands only ${withUnit(numberText(marginDb, 0), 'dB')} over the room. More level, or more time, would settle it.`,
    ),
  ];
}

function silent(channel: string): string {
  return msg(
    str`Nothing of the noise is heard from ${channel}. Check its amplifier, its plug and the microphone.`,
  );
}

function times(count: number): string {
  return count === 1 ? msg('once') : count === 2 ? msg('twice') : msg(str`${count} times`);
}
