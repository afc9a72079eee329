import type { Bench } from './bench';

/**
 * Asks the browser once not to throw away what is stored here when room gets scarce, as soon as
 * there is a take to lose: some browsers ask the person then. A refusal changes nothing.
 */
export function askToKeep(bench: Bench): void {
  if (!('storage' in navigator)) return;
  const leave = bench.subscribe(look);
  look();
  function look(): void {
    if (bench.state.document.takes.length === 0) return;
    leave();
    navigator.storage.persist().catch(() => undefined);
  }
}
