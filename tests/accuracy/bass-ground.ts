import type { AlignmentOptions } from '../../dsp/bass/align-sub';
import { bandEnvelope, envelopeOnset } from '../../dsp/bass/band-envelope';
import { throughPath } from '../../dsp/bass/electrical-path';
import type { SeatTransfers } from '../../dsp/bass/transfer';
import { median } from '../../dsp/signal/median';
import { hz, measuredSeats, type BassScene } from './bass-scene';

/** Steps of the processor that scenes are set up with. */
export const stepsHz = [40, 50, 60, 70, 80, 90, 100, 110, 120, 150, 200];

/** The seats that a microphone stood at, and those that are only judged. */
export const near = (all: SeatTransfers): SeatTransfers => all.slice(0, measuredSeats);
export const far = (all: SeatTransfers): SeatTransfers => all.slice(measuredSeats);

export const filtersAt = (cutoffHz: number): Pick<AlignmentOptions, 'highPass' | 'lowPass'> => ({
  highPass: [{ family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz }],
  lowPass: [{ family: 'linkwitz-riley', kind: 'low-pass', order: 4, cutoffHz }],
});

/** Delay at which the direct sounds alone line up, filters included. */
export function directDelayAt({ main, subs: [sub] }: BassScene, crossoverHz: number): number {
  const { highPass, lowPass } = filtersAt(crossoverHz);
  const high = throughPath(near(main.direct), { filters: highPass }, hz);
  return difference(high, throughPath(near(sub.direct), { filters: lowPass }, hz), crossoverHz, 1);
}

/** A main's treble tells its arrival to a tenth of a millisecond: the table of takes shows it. */
export function arrivalDelay({ main, subs: [sub] }: BassScene): { arrivalDelaySeconds?: number } {
  const { arrivalSeconds } = sub;
  if (arrivalSeconds === null) return {};
  return { arrivalDelaySeconds: main.pathSeconds + main.model.delaySeconds - arrivalSeconds };
}

/** Median over seats of the main's less the sub's time at a share of the envelope's peak. */
export function difference(
  main: SeatTransfers,
  sub: SeatTransfers,
  crossoverHz: number,
  share: number,
): number {
  const at = (seats: SeatTransfers): number[] =>
    seats.map((seat) => {
      const band = { hz, lowHz: crossoverHz / 2.2, highHz: crossoverHz * 2.2 };
      return envelopeOnset(bandEnvelope(seat, band), share) ?? 0;
    });
  const low = at(sub);
  return median(at(main).map((seconds, seat) => seconds - (low[seat] ?? 0)));
}
