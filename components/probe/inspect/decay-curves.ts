import type { DecayAnswer } from '../../../src/inspect/inspection';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';

const lines = [
  { name: 'T20', of: 't20', stroke: 'solid', colour: 'var(--ink)' },
  { name: 'T30', of: 't30', stroke: 'dashed', colour: 'var(--ink)' },
  { name: 'EDT', of: 'edt', stroke: 'dotted', colour: 'var(--soft)' },
] as const;

/** Decay times over the octaves. */
export function decayTraces({ bands }: DecayAnswer): CurveTrace[] {
  return lines.map(({ name, of, stroke, colour }) => ({
    name,
    stroke,
    colour,
    x: bands.map(({ midHz }) => midHz),
    y: bands.map((band) => band[of].seconds),
  }));
}

/** From nothing to what holds all times. */
export function decayAxes(traces: readonly CurveTrace[]): CurveAxes {
  const told = traces.flatMap(({ y }) => y.filter((seconds) => seconds !== null));
  const high = Math.max(0.4, Math.ceil(5 * Math.max(0, ...told) + 0.5) / 5);
  return {
    x: { kind: 'frequency', low: 25, high: 20_000 },
    y: { unit: 's', digits: 2, low: 0, high },
  };
}
