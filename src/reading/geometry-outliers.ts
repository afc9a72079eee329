import { fitSeat, misfit, type PlacedDistance, type SeatFit } from './geometry-fit';

/** The seat that most distances agree on, and the speakers that do not fit it. */
export interface AgreedSeat {
  readonly fit: SeatFit;
  /** With what their distances are too long by, metres. */
  readonly strangers: readonly { readonly speaker: PlacedDistance; readonly metres: number }[];
}

/** Distances agree when none is off by more than this, metres; common practice. */
export const agreeMetres = 0.15;
/** A speaker does not fit from here on, metres; common practice. */
export const strangeMetres = 0.3;
/** Speakers that must agree, so that one or two more can be called strangers. */
const leastAgreeing = [4, 6] as const;
/** Without another, the next best stranger must leave the rest this many times worse. */
const clearly = 2;

/**
 * The seat that the distances agree on, leaving out at most two speakers, each only when it alone
 * explains the disagreement. Null when they agree on none or it cannot be told.
 */
export function agreeOnSeat(speakers: readonly PlacedDistance[]): AgreedSeat | null {
  let kept = speakers;
  let strangers: readonly PlacedDistance[] = [];
  for (;;) {
    const fit = fitSeat(kept);
    if (!fit) return null;
    if (fit.worstMetres <= agreeMetres) {
      const said = strangers.map((speaker) => ({ speaker, metres: misfit(fit, speaker) }));
      return said.every(({ metres }) => Math.abs(metres) > strangeMetres)
        ? { fit, strangers: said }
        : null;
    }
    const least = leastAgreeing[strangers.length];
    const next = least === undefined ? null : strangest(kept, least, strangers.length > 0);
    if (!next) return null;
    kept = kept.filter((one) => one !== next);
    strangers = [...strangers, next];
  }
}

/** The speaker without which the others agree best; null when that is not clear. */
function strangest(
  speakers: readonly PlacedDistance[],
  least: number,
  isLast: boolean,
): PlacedDistance | null {
  if (speakers.length - 1 < least) return null;
  const without = speakers
    .flatMap((speaker) => {
      const fit = fitSeat(speakers.filter((one) => one !== speaker));
      return fit ? [{ speaker, worst: fit.worstMetres }] : [];
    })
    .sort((a, b) => a.worst - b.worst);
  const [best, second] = without;
  if (!best) return null;
  const isClear = second === undefined || second.worst >= clearly * best.worst;
  const done = best.worst <= agreeMetres;
  return (done && isClear) || (!done && !isLast) ? best.speaker : null;
}
