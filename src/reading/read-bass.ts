import { bassGrid, bassTransfer } from '../../dsp/bass/transfer';
import { filterResponse } from '../../dsp/filter/analogue';
import { divide } from '../../dsp/filter/complex';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import type { BassReading } from './reading';
import { divisibleHz, type FilterInForce } from './take-out-filter';
import type { ChannelInForce } from './take-out-settings';

/** So many digits keep a sum of two speakers right to 0.01 dB and a session small. */
const digits = 4;

/**
 * Complex bass of a channel on bassGrid(), its time zero at `originSeconds` of the response, without
 * delay, trim and crossover in force. Null where a delay in force is not known, or where the subs
 * played the channel's bass meanwhile: what was heard there is theirs.
 */
export function readBass(
  ir: ImpulseResponse,
  originSeconds: number,
  { delay, trimDb, filter }: ChannelInForce,
): BassReading | null {
  if (!delay || filter?.bassOnSubs) return null;
  const hz = bassGrid();
  if (4 * (hz.at(-1) ?? 0) > ir.sampleRate) return null;
  const heard = bassTransfer(ir, hz, originSeconds + delay.seconds);
  const gain = 10 ** (-trimDb / 20);
  const inverse = inverseOf(filter, hz);
  const re: number[] = [];
  const im: number[] = [];
  for (const [k, own] of inverse.entries()) {
    const [a, b] = [gain * (heard.re[k] ?? 0), gain * (heard.im[k] ?? 0)];
    re.push(rounded(a * own.re - b * own.im));
    im.push(rounded(a * own.im + b * own.re));
  }
  return { re, im };
}

/** The bass `gainDb` louder and `laterSeconds` later, rounded anew. */
export function moveBass(bass: BassReading, gainDb: number, laterSeconds: number): BassReading {
  const gain = 10 ** (gainDb / 20);
  const turned = Array.from(bassGrid(), (f, k) => {
    const turn = -2 * Math.PI * f * laterSeconds;
    const [cos, sin] = [gain * Math.cos(turn), gain * Math.sin(turn)];
    const [a, b] = [bass.re[k] ?? 0, bass.im[k] ?? 0];
    return { re: rounded(a * cos - b * sin), im: rounded(a * sin + b * cos) };
  });
  return { re: turned.map(({ re }) => re), im: turned.map(({ im }) => im) };
}

/** 1/H of a filter in force, outside the range it can be divided out in as at its ends. */
function inverseOf(filter: FilterInForce | null, hz: Float64Array) {
  const one = { re: 1, im: 0 };
  if (!filter) return Array.from(hz, () => one);
  const [low, high] = divisibleHz(filter);
  return Array.from(hz, (f) =>
    divide(one, filterResponse(filter.spec, Math.min(Math.max(f, low), high))),
  );
}

function rounded(value: number): number {
  return Number(value.toPrecision(digits)) + 0;
}
