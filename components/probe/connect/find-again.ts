import type { ChosenDevice } from '../../../src/session/document';

/** A chosen device among those there are: by its id, else by its name where only one has it. */
export function findAgain(
  chosen: ChosenDevice,
  devices: readonly ChosenDevice[],
): ChosenDevice | null {
  const byId = devices.find(({ id }) => id === chosen.id);
  if (byId) return byId;
  const byName = devices.filter(({ name }) => name !== '' && name === chosen.name);
  return byName.length === 1 ? (byName[0] ?? null) : null;
}
