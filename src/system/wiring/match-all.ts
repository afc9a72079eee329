/**
 * Whether every item of `left` can have a place of its own (augmenting paths; Kuhn 1955, Berge
 * 1957). `placesOf` gives where an item may go; a place with no limit takes any number.
 */
export function canMatchAll(
  left: readonly number[],
  placesOf: (item: number) => readonly number[],
  isLimited: (place: number) => boolean = () => true,
): boolean {
  const holder = new Map<number, number>();
  const augment = (item: number, seen: Set<number>): boolean => {
    for (const place of placesOf(item)) {
      if (!isLimited(place)) return true;
      if (seen.has(place)) continue;
      seen.add(place);
      const other = holder.get(place);
      if (other === undefined || augment(other, seen)) {
        holder.set(place, item);
        return true;
      }
    }
    return false;
  };
  return left.every((item) => augment(item, new Set()));
}
