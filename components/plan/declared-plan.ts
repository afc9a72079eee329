import { msg } from '@lit/localize';
import type { Bench, BenchState } from '../../src/session/bench';
import type { DeclaredSystem } from '../../src/system/declared-system';
import type { DeclaredPlan } from '../../src/system/standing-place';
import { isTrouble, type Trouble } from '../../src/trouble';

/** What places are held against, from the bench. */
export function declaredPlan({ layout, document }: BenchState): DeclaredPlan {
  return {
    layout,
    system: document.system,
    nominalMetres: document.conditions.referenceDistanceMetres,
  };
}

/** Whether something runs that the plan must stay still for. */
export function isBusy({ activity }: BenchState): boolean {
  return activity.kind !== 'idle';
}

/**
 * Puts a changed declaration into the document by a named change. Returns the sentence of what was
 * refused, which changes nothing; null when it was done.
 */
export function declare(
  bench: Bench | null,
  name: string,
  system: DeclaredSystem | Trouble,
): string | null {
  if (isTrouble(system)) return system.sentence;
  if (!bench) return null;
  if (isBusy(bench.state)) return msg('The plan stays as it is while a take runs.');
  bench.change(name, (document) => ({ ...document, system }));
  return null;
}
