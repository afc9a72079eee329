import type { Bench } from '../../src/session/bench';

/** What a sheet remembers of a bench until the page is closed: wishes that are no measurement. */
export interface Memory<Kept> {
  of(bench: Bench): Kept;
  keep(bench: Bench, value: Kept): void;
}

/** A memory that begins with what `first` makes. */
export function createMemory<Kept>(first: (bench: Bench) => Kept): Memory<Kept> {
  const kept = new WeakMap<Bench, Kept>();
  return {
    of: (bench) => kept.get(bench) ?? first(bench),
    keep: (bench, value) => void kept.set(bench, value),
  };
}
