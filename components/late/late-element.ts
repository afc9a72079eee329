import { late, type Late } from '../../src/late';

/** An element whose module `fetch` brings. It is there as soon as its tag is defined, whoever did that. */
export function lateElement(tag: string, fetch: () => Promise<object>): Late<object> {
  const part = late(fetch);
  return {
    get now() {
      return customElements.get(tag) ?? null;
    },
    load: () => part.load(),
  };
}
