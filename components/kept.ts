/** Something worked out that is kept until what it rests on changes. */
export class Kept<Value> {
  private last: { readonly key: readonly unknown[]; readonly value: Value } | null = null;

  /** What was kept for the same key, else what `make` gives now. */
  of(key: readonly unknown[], make: () => Value): Value {
    const { last } = this;
    if (last && key.every((one, n) => one === last.key[n])) return last.value;
    const value = make();
    this.last = { key, value };
    return value;
  }
}
