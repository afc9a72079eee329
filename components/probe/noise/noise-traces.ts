import { msg, str } from '@lit/localize';
import type { NoiseReading } from '../../../src/noise/noise-state';
import type { BenchState } from '../../../src/session/bench';
import type { ResponseTrace } from '../../charts/response-trace';
import { curveAt } from '../../charts/curve-path';
import { isNumber, numberText, thinSpace } from '../../../src/locale/number-text';
import { groupColour } from '../../group-colour';
import { currentReadings } from '../take/take-lanes';

/** The kept reading's response, and the sweep's of the same speaker beside it where there is one. */
export function noiseTraces(kept: NoiseReading, state: BenchState): ResponseTrace[] {
  const { response, channel } = kept;
  if (!response) return [];
  const group = state.layout.channels.find(({ label }) => label === channel)?.group;
  const colour = group ? groupColour(group) : 'var(--ink)';
  const curves = {
    response: { hz: [...response.hz], db: [...response.db], noiseDb: [...response.noiseDb] },
    fit: null,
    envelope: { startSeconds: 0, stepSeconds: 1, level: [] },
  };
  const sweep = currentReadings(state)?.channels.find((one) => one.channel === channel)?.curves;
  return [
    { channel: `${channel}, ${kept.kind}`, colour, curves, marks: [] },
    ...(sweep
      ? [{ channel: msg(str`${channel}, sweep`), colour: 'var(--ink)', curves: sweep, marks: [] }]
      : []),
  ];
}

const clearOfNoiseDb = 10;

/** How far noise and sweep differ where both stand clear of the noise; null without a sweep. */
export function differenceSentence(kept: NoiseReading, state: BenchState): string | null {
  const [noise, sweep] = noiseTraces(kept, state);
  if (!noise || !sweep) return null;
  const { hz, db, noiseDb } = noise.curves.response;
  const other = sweep.curves.response;
  let most = 0;
  let sum = 0;
  let count = 0;
  hz.forEach((f, index) => {
    const one = db[index];
    const floor = noiseDb[index];
    const two = curveAt(other.hz, other.db, f);
    if (f < kept.lowHz || f > kept.highHz || !isNumber(one) || !isNumber(two)) return;
    if (isNumber(floor) && one - floor < clearOfNoiseDb) return;
    most = Math.max(most, Math.abs(one - two));
    sum += (one - two) ** 2;
    count++;
  });
  if (count === 0) return null;
  const rms = numberText(Math.sqrt(sum / count), 2);
  return msg(
    str`Differs from the sweep by ${rms}${thinSpace}dB on average and ${numberText(most, 2)}${thinSpace}dB at most, where both stand clear of the noise.`,
  );
}
