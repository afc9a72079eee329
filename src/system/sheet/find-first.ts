/** Index of the first item that stands in the list before; -1 when all are different. */
export function firstRepeat(items: readonly unknown[]): number {
  return items.findIndex((item, index) => items.indexOf(item) < index);
}

/** The first finding that is not null. */
export function firstFinding<Item>(
  items: readonly Item[],
  find: (item: Item, index: number) => string | null,
): string | null {
  for (const [index, item] of items.entries()) {
    const found = find(item, index);
    if (found !== null) return found;
  }
  return null;
}
