import { localeInForce } from './locale-in-force';

/** A weak map of things that hold sentences: what was kept in another locale counts as not kept. */
export class LocaleMap<Key extends WeakKey, Value> {
  #locale = localeInForce();
  #kept = new WeakMap<Key, Value>();

  get(key: Key): Value | undefined {
    return this.#current().get(key);
  }

  set(key: Key, value: Value): void {
    this.#current().set(key, value);
  }

  #current(): WeakMap<Key, Value> {
    const now = localeInForce();
    if (this.#locale !== now) this.#kept = new WeakMap();
    this.#locale = now;
    return this.#kept;
  }
}
