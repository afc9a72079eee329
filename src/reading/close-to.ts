import type { ChannelLabel } from '../system/channel';

/** A microphone held a hand's width or less from a speaker, where the room is hardly heard. */
export interface CloseTo {
  readonly channel: ChannelLabel;
  /** The cone of a box whose port plays elsewhere, unheard: the fit allows for it. */
  readonly coneOnly: boolean;
  /** The microphone is in the mouth of the box's port instead; left out: before the cone. */
  readonly port?: PortSize | undefined;
}

/** What cone and port are summed by. */
export interface PortSize {
  /** Diameters, m: of the cone to the middle of its surround, and of the port's mouth. */
  readonly coneMetres: number;
  readonly portMetres: number;
}

/** Diameters that are believed, m. */
export const diameterMetres = { low: 0.01, high: 1 } as const;

/** False for a port more than twice as wide as its cone: no box has such a one. */
export function fitsItsBox({ coneMetres, portMetres }: PortSize): boolean {
  return portMetres <= 2 * coneMetres;
}
