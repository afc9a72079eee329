import type { ChannelLabel, Layout } from './channel';

/** Where a speaker stands, seen from the main seat. Degrees positive to the left and upward. */
export interface DeclaredPlace {
  readonly azimuthDegrees: number;
  readonly elevationDegrees: number;
  /** By tape or from the plan; null when it is not known. */
  readonly distanceMetres: number | null;
}

/** A rectangular room and the main seat in it, metres. */
export interface DeclaredRoom {
  /** Front wall to back wall. */
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
  readonly seatFromFrontMetres: number;
  readonly seatFromLeftMetres: number;
  /** Ears above the floor. */
  readonly earHeightMetres: number;
}

/** Another seat, from the main one, metres. */
export interface DeclaredSeat {
  readonly name: string;
  readonly rightMetres: number;
  readonly backMetres: number;
}

/** What was declared of a system beside which speakers it has. */
export interface DeclaredSystem {
  /** Speakers that were placed; the others stand where the layout has them. */
  readonly places: Readonly<Partial<Record<ChannelLabel, DeclaredPlace>>>;
  /** Heights that are bounced off the ceiling instead of aimed down. */
  readonly bounced: readonly ChannelLabel[];
  readonly room: DeclaredRoom | null;
  readonly seats: readonly DeclaredSeat[];
}

export const nothingDeclared: DeclaredSystem = { places: {}, bounced: [], room: null, seats: [] };

/** A layout with its speakers where they were declared to stand. */
export function placedLayout(layout: Layout, { places }: DeclaredSystem): Layout {
  return {
    ...layout,
    channels: layout.channels.map((channel) => {
      const place = places[channel.label];
      if (!place) return channel;
      const { azimuthDegrees, elevationDegrees } = place;
      return { ...channel, azimuthDegrees, elevationDegrees };
    }),
  };
}
