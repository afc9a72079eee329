import type { SeatReadings } from '../proposal/bass-field';
import type { Readings } from '../reading/reading';
import type { ProposalTerms } from './proposal-terms';

/** Terms whose readings are bytes: copying them to a worker costs the page next to nothing. */
export type PackedTerms = Omit<ProposalTerms, 'readings' | 'options'> & {
  readonly readings: Uint8Array;
  readonly options: Omit<ProposalTerms['options'], 'otherSeats'>;
  readonly otherSeats: readonly { readonly name: string; readonly readings: Uint8Array }[];
};

/** Readings as bytes; they do not change, and go to a worker with every move of a handle. */
const packed = new WeakMap<Readings, Uint8Array>();

/** Terms to be sent; the same readings are packed once. */
export function packTerms(terms: ProposalTerms): PackedTerms {
  const { readings, options, ...others } = terms;
  const { otherSeats = [], ...rest } = options;
  return {
    ...others,
    readings: pack(readings),
    options: rest,
    otherSeats: otherSeats.map((seat) => ({ name: seat.name, readings: pack(seat.readings) })),
  };
}

/** The terms that were packed. */
export function unpackTerms({
  readings,
  otherSeats,
  options,
  ...others
}: PackedTerms): ProposalTerms {
  const seats = otherSeats.map((seat): SeatReadings => ({
    ...seat,
    readings: unpack(seat.readings),
  }));
  return { ...others, readings: unpack(readings), options: { ...options, otherSeats: seats } };
}

function pack(readings: Readings): Uint8Array {
  const known = packed.get(readings);
  if (known) return known;
  const bytes = new TextEncoder().encode(JSON.stringify(readings));
  packed.set(readings, bytes);
  return bytes;
}

/** What packTerms made of readings: finite numbers come back digit for digit. */
function unpack(bytes: Uint8Array): Readings {
  return JSON.parse(new TextDecoder().decode(bytes)) as Readings;
}
