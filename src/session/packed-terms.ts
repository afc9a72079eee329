import { pack, unpack } from '../packed';
import type { SeatReadings } from '../proposal/bass-field';
import type { Readings } from '../reading/reading';
import type { RolloffTogether } from '../reading/rolloff-together';
import type { ProposalTerms } from './proposal-terms';

/** Terms whose large parts are bytes: copying them to a worker costs the page next to nothing. */
export type PackedTerms = Omit<ProposalTerms, 'readings' | 'options'> & {
  readonly readings: Uint8Array;
  readonly options: Omit<ProposalTerms['options'], 'otherSeats' | 'together'>;
  readonly otherSeats: readonly { readonly name: string; readonly readings: Uint8Array }[];
  readonly together: readonly Uint8Array[];
};

/** Terms to be sent; the same readings are packed once. */
export function packTerms(terms: ProposalTerms): PackedTerms {
  const { readings, options, ...others } = terms;
  const { otherSeats = [], together = [], ...rest } = options;
  return {
    ...others,
    readings: pack(readings),
    options: rest,
    otherSeats: otherSeats.map((seat) => ({ name: seat.name, readings: pack(seat.readings) })),
    together: together.map(pack),
  };
}

/** The parts of terms that are sent as bytes. */
export function partsToPack({ readings, options }: ProposalTerms): object[] {
  const { otherSeats = [], together = [] } = options;
  return [readings, ...otherSeats.map((seat) => seat.readings), ...together];
}

/** The terms that were packed. */
export function unpackTerms({
  readings,
  otherSeats,
  together,
  options,
  ...others
}: PackedTerms): ProposalTerms {
  const seats = otherSeats.map((seat): SeatReadings => ({
    ...seat,
    readings: unpack<Readings>(seat.readings),
  }));
  return {
    ...others,
    readings: unpack<Readings>(readings),
    options: {
      ...options,
      otherSeats: seats,
      together: together.map((one) => unpack<RolloffTogether>(one)),
    },
  };
}
