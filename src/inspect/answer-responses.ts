import { gateResponse } from '../../dsp/response/gate';
import { logGrid } from '../../dsp/response/smoothing';
import { smoothingOctaves, type SmoothingKind } from '../../dsp/response/smoothing-kind';
import { windowedSpectrum } from '../../dsp/response/windowed-spectrum';
import { arrivalOf } from './arrival-of';
import type { HeardSource } from './heard-source';
import type { InspectRequest, ResponseCurve, ResponsesAnswer, ResponseWindow } from './inspection';
import { responseCurve, type TakeResponse } from './response-of-take';

/** Where curves are told: the audible range, a little beyond it at the low end. */
const rangeHz = [10, 20_000] as const;
/** Points of a curve to the octave, finer than the finest band it is smoothed over. */
const pointsPerOctave = 48;
/** A window by periods is a direct sum for every point: fewer of them do. */
const windowedPerOctave = 24;

/**
 * Responses of some speakers on one grid of frequencies, with the noise in them. A gate takes the
 * noise's share with it; of a window by periods the noise is not told.
 */
export function answerResponses(
  heard: readonly HeardSource[],
  { smoothing, window }: Extract<InspectRequest, { kind: 'responses' }>,
): ResponsesAnswer {
  const highHz = Math.min(
    rangeHz[1],
    ...heard.map(({ response }) => 0.45 * response.ir.sampleRate),
  );
  const perOctave = window.kind === 'cycles' ? windowedPerOctave : pointsPerOctave;
  const hz = Array.from(logGrid(rangeHz[0], highHz, perOctave));
  return {
    kind: 'responses',
    hz,
    curves: heard.map(({ source, response }) => ({
      source,
      ...curveOf(response, hz, smoothing, window),
    })),
  };
}

function curveOf(
  response: TakeResponse,
  hz: readonly number[],
  smoothing: SmoothingKind,
  window: ResponseWindow,
): Omit<ResponseCurve, 'source'> {
  if (window.kind === 'whole') {
    const { power, noisePower } = responseCurve(response, hz, smoothing);
    return { power, noisePower, fromHz: null };
  }
  const arrivalSeconds = arrivalOf(response);
  if (window.kind === 'cycles') {
    const { cycles } = window;
    const { power, limitHz } = windowedSpectrum(response.ir, { arrivalSeconds, cycles, hz });
    return { power: smoothPoints(power, hz, smoothing), noisePower: null, fromHz: limitHz };
  }
  const afterSeconds = window.milliseconds / 1000;
  const gate = { arrivalSeconds, beforeSeconds: 0.002, afterSeconds };
  const { ir, lowestHz } = gateResponse(response.ir, gate);
  const noise = response.noise && gateResponse(response.noise, gate).ir;
  const { power, noisePower } = responseCurve({ ...response, ir, noise }, hz, smoothing);
  return { power, noisePower, fromHz: lowestHz };
}

/** Power mean of the points within the width that the smoothing has at each. */
function smoothPoints(
  power: Float64Array,
  hz: readonly number[],
  kind: SmoothingKind,
): Float64Array {
  return power.map((own, k) => {
    const half = (smoothingOctaves(kind, hz[k] ?? 1) / 2) * windowedPerOctave;
    const [first, last] = [Math.ceil(k - half), Math.floor(k + half)];
    let [sum, count] = [0, 0];
    for (let n = Math.max(0, first); n <= Math.min(power.length - 1, last); n++) {
      sum += power[n] ?? 0;
      count++;
    }
    return count > 0 ? sum / count : own;
  });
}
