import { numberText, withUnit } from '../../locale/number-text';
import { msg, str } from '@lit/localize';
import { countStarved } from './count-starved';
import type { Output } from './open-output';

/** What the browser tells of audio it lost; the marks tell the rest. */
export function lossNotes({ native }: Output, samples: Float32Array): string[] {
  const notes: string[] = [];
  const starved = countStarved(samples);
  if (starved > 0)
    notes.push(msg(str`microphone audio came late ${starved} times: silence instead`));
  const underruns = native.underruns();
  if (underruns === null) notes.push(msg('not told by the browser: underruns of the output'));
  else if (underruns.count > 0) {
    notes.push(
      msg(
        str`output ran dry ${underruns.count} times, ${withUnit(numberText(underruns.seconds, 3), 's')}`,
      ),
    );
  }
  return notes;
}
