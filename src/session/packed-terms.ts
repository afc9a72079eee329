import type { ParcelOpener, ParcelSender, Parcel } from '../parcel';
import type { SeatReadings } from '../proposal/bass-field';
import type { Readings } from '../reading/reading';
import type { RolloffTogether } from '../reading/rolloff-together';
import type { ProposalTerms } from './proposal-terms';

/** Terms whose large parts are parcels: copying them to a worker costs the page next to nothing. */
export type PackedTerms = Omit<ProposalTerms, 'readings' | 'options'> & {
  readonly options: Omit<ProposalTerms['options'], 'otherSeats' | 'together'>;
  /** The readings, those of other seats in the order of their names, and what was read together. */
  readonly parts: readonly Parcel[];
  readonly otherSeats: readonly string[];
};

/** Terms to be sent to the worker of `sender`. */
export function packTerms(terms: ProposalTerms, sender: ParcelSender): PackedTerms {
  const { readings, options, ...others } = terms;
  const { otherSeats = [], together = [], ...rest } = options;
  return {
    ...others,
    options: rest,
    parts: sender.pack(inOrder(readings, otherSeats, together)),
    otherSeats: otherSeats.map(({ name }) => name),
  };
}

/** The parts of terms that are sent as bytes. */
export function partsToPack({ readings, options }: ProposalTerms): object[] {
  return inOrder(readings, options.otherSeats ?? [], options.together ?? []);
}

function inOrder(
  readings: Readings,
  otherSeats: readonly SeatReadings[],
  together: readonly RolloffTogether[],
): object[] {
  return [readings, ...otherSeats.map((seat) => seat.readings), ...together];
}

/** The terms that were packed. */
export function unpackTerms(terms: PackedTerms, opener: ParcelOpener): ProposalTerms {
  const { parts, otherSeats, options, ...others } = terms;
  const [readings, ...rest] = opener.unpack(parts);
  const seats = otherSeats.map((name, at) => ({ name, readings: rest[at] as Readings }));
  return {
    ...others,
    readings: readings as Readings,
    options: {
      ...options,
      otherSeats: seats,
      together: rest.slice(seats.length) as RolloffTogether[],
    },
  };
}
