import type { PhaseAnswer, SoundSource, TimeAnswer } from '../../../src/inspect/inspection';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import type { ShownSource } from './inspect-sources';

type Look = Pick<CurveTrace, 'name' | 'colour' | 'stroke'>;

/** How the line of an answer's curve looks; null when its source is no longer shown. */
function lookOf(source: SoundSource, sources: readonly ShownSource[]): Look | null {
  const shown = sources.find(
    (one) => one.takeId === source.takeId && one.channel === source.channel,
  );
  return shown ? { name: shown.name, colour: shown.colour, stroke: shown.stroke } : null;
}

function tracesOf<Curve extends { readonly source: SoundSource }>(
  curves: readonly Curve[],
  sources: readonly ShownSource[],
  draw: (curve: Curve) => Pick<CurveTrace, 'x' | 'y'>,
): CurveTrace[] {
  return curves.flatMap((curve) => {
    const look = lookOf(curve.source, sources);
    return look ? [{ ...look, ...draw(curve) }] : [];
  });
}

/** Group delay after the arrival, milliseconds. */
export function groupDelayTraces(answer: PhaseAnswer, sources: readonly ShownSource[]) {
  return tracesOf(answer.curves, sources, ({ groupDelay }) => ({
    x: answer.hz,
    y: groupDelay.map((seconds) => (seconds === null ? null : seconds * 1000)),
  }));
}

/** Phase beyond the minimum phase, degrees. */
export function excessPhaseTraces(answer: PhaseAnswer, sources: readonly ShownSource[]) {
  return tracesOf(answer.curves, sources, ({ excessPhase }) => ({ x: answer.hz, y: excessPhase }));
}

/** Energy over time, dB below the largest. */
export function energyTraces(answer: TimeAnswer, sources: readonly ShownSource[]) {
  return tracesOf(answer.curves, sources, ({ energy }) => ({ x: energy.seconds, y: energy.db }));
}

/** Step response, 1 at its largest. */
export function stepTraces(answer: TimeAnswer, sources: readonly ShownSource[]) {
  return tracesOf(answer.curves, sources, ({ step }) => ({ x: step.seconds, y: step.level }));
}

const frequency = { kind: 'frequency', low: 15, high: 20_000 } as const;

/** Axis of the group delay: from 0 or what comes earlier, to what the bass needs, at most 200 ms. */
export function groupDelayAxes(traces: readonly CurveTrace[]): CurveAxes {
  const told = traces.flatMap(({ y }) => y.filter((ms) => ms !== null));
  const high = Math.min(200, Math.max(10, Math.ceil(Math.max(0, ...told) / 10) * 10));
  const low = Math.max(-20, Math.min(0, Math.floor(Math.min(0, ...told) / 5) * 5));
  return { x: frequency, y: { unit: 'ms', digits: 1, low, high } };
}

/** Axis of the excess phase: whole half turns, at most four turns. */
export function excessPhaseAxes(traces: readonly CurveTrace[]): CurveAxes {
  const told = traces.flatMap(({ y }) => y.filter((degrees) => degrees !== null));
  const high = Math.min(720, Math.max(180, Math.ceil(Math.max(0, ...told) / 180) * 180));
  const low = Math.max(-720, Math.min(-180, Math.floor(Math.min(0, ...told) / 180) * 180));
  return { x: frequency, y: { unit: '°', digits: 0, low, high } };
}

export const energyAxes: CurveAxes = {
  x: { kind: 'time', low: -0.005, high: 0.3 },
  y: { unit: 'dB', digits: 1, low: -70, high: 0 },
};

export const stepAxes: CurveAxes = {
  x: { kind: 'time', low: -0.002, high: 0.02 },
  y: { unit: '', digits: 2, low: -1.1, high: 1.1 },
};
