import { pack, unpack } from './packed';

/** A part of an order to a worker; without bytes it is one the worker has from the order before. */
export interface Parcel {
  readonly id: number;
  readonly bytes: Uint8Array | null;
}

/**
 * Packs parts of orders to one worker: what was in the order before is not sent again. A part that
 * stands twice in an order is one parcel that stands twice.
 */
export class ParcelSender {
  private sent = new Map<object, number>();
  private next = 0;

  pack(parts: readonly object[]): Parcel[] {
    const before = this.sent;
    this.sent = new Map();
    return parts.map((part) => {
      const known = before.get(part) ?? this.sent.get(part);
      const id = known ?? this.next++;
      this.sent.set(part, id);
      return { id, bytes: known === undefined ? pack(part) : null };
    });
  }
}

/** Opens the parcels of each order in turn; what stands in the order before is at hand. */
export class ParcelOpener {
  private kept = new Map<number, object>();

  /** Throws RangeError for a parcel without bytes that was in no order before. */
  unpack(parcels: readonly Parcel[]): object[] {
    const before = this.kept;
    this.kept = new Map();
    return parcels.map(({ id, bytes }) => {
      const part = bytes ? unpack(bytes) : (before.get(id) ?? this.kept.get(id));
      if (!part) throw new RangeError(`parcel ${id} was never sent`);
      this.kept.set(id, part);
      return part;
    });
  }
}
