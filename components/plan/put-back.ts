import type { LitElement } from 'lit';

/**
 * Shows again what was in a field before an entry that was refused. Waits until the field has drawn
 * the entry: what is put back before would be no change to it.
 */
export async function putBack<Field extends LitElement>(
  event: Event,
  restore: (field: Field) => void,
): Promise<void> {
  const field = event.target as Field;
  await field.updateComplete;
  restore(field);
}
