import type { SessionDocument } from '../../../src/session/document';

/** What a session holds that must never be lost again once the app said it was saved. */
export interface KeptSession {
  readonly id: string;
  readonly name: string;
  readonly layout: string;
  readonly takes: readonly {
    readonly id: string;
    readonly captureId: string;
    readonly read: boolean;
  }[];
  readonly typed: Readonly<Record<string, string>>;
  readonly crossovers: readonly string[];
}

/** What is to be kept of a session as it is now. */
export function keptOf(document: SessionDocument): KeptSession {
  const { id, name, layout, takes, typed, chosenCrossoverHz } = document;
  return {
    id,
    name,
    layout,
    takes: takes.map((take) => ({
      id: take.id,
      captureId: take.captureId,
      read: take.readings !== null,
    })),
    typed,
    crossovers: Object.keys(chosenCrossoverHz),
  };
}

/**
 * What of a session that was said to be saved is not in what was found, one sentence each. What was
 * found may have come further.
 */
export function lostFrom(said: KeptSession, found: KeptSession): string[] {
  const lost: string[] = [];
  const where = `session ${said.name}`;
  if (found.layout !== said.layout) lost.push(`${where} has ${found.layout}, not ${said.layout}`);
  for (const take of said.takes) {
    const now = found.takes.find(({ id }) => id === take.id);
    if (!now) lost.push(`${where} lost take ${take.id}`);
    else if (now.captureId !== take.captureId) lost.push(`${where}: a take has other sound`);
    else if (take.read && !now.read) lost.push(`${where} lost the readings of take ${take.id}`);
  }
  for (const [line, value] of Object.entries(said.typed)) {
    if (found.typed[line] !== value) lost.push(`${where} lost the tick of ${line}`);
  }
  for (const group of said.crossovers) {
    if (!found.crossovers.includes(group)) lost.push(`${where} lost the crossover of ${group}`);
  }
  return lost;
}
