import { msg, str } from '@lit/localize';
import type { CloseTo, PortSize } from '../../../src/reading/close-to';
import type { BenchState } from '../../../src/session/bench';
import type { Position, SessionDocument } from '../../../src/session/document';

/** A position of the session, with how many takes were made there. */
export interface UsedPosition {
  readonly position: Position;
  readonly takes: number;
}

/** Every position with takes, oldest first, and the one in hand. */
export function positionsOf({ takes, position }: SessionDocument): UsedPosition[] {
  const found = new Map<string, UsedPosition>();
  for (const take of takes) {
    const before = found.get(take.position.id)?.takes ?? 0;
    found.set(take.position.id, { position: take.position, takes: before + 1 });
  }
  const here = found.get(position.id)?.takes ?? 0;
  found.set(position.id, { position, takes: here });
  return [...found.values()];
}

/** The name of the next seat: the lowest number no position has. */
export function nextSeatName(document: SessionDocument): string {
  const names = new Set(positionsOf(document).map(({ position }) => position.name));
  for (let number = 1; ; number++) {
    const name = msg(str`Seat ${number}`);
    if (!names.has(name)) return name;
  }
}

/** Names of the plan's seats that the microphone has not stood at, in the plan's order. */
export function seatsToCome(document: SessionDocument): readonly string[] {
  const names = new Set(positionsOf(document).map(({ position }) => position.name));
  return document.system.seats.map(({ name }) => name).filter((name) => !names.has(name));
}

/** Takes that make up the readings of the position in hand. */
export function joinedTakes({ document, layout }: BenchState): number {
  return document.takes.filter(
    ({ position, schedule, readings }) =>
      position.id === document.position.id && schedule.layout === layout.name && readings !== null,
  ).length;
}

/** The document without the takes of a position; what was kept of noise there stays. */
export function discardTakes(document: SessionDocument, id: string): SessionDocument {
  return { ...document, takes: document.takes.filter(({ position }) => position.id !== id) };
}

/** The document with a position renamed wherever it stands. */
export function renamePosition(
  document: SessionDocument,
  id: string,
  name: string,
): SessionDocument {
  const renamed = (position: Position): Position =>
    position.id === id ? { ...position, name } : position;
  return {
    ...document,
    position: renamed(document.position),
    takes: document.takes.map((take) => ({ ...take, position: renamed(take.position) })),
  };
}

/** The document whose close position hears the cone only, or all of the speaker; its takes are read again. */
export function hearConeOnly(document: SessionDocument, coneOnly: boolean): SessionDocument {
  return hearClose(document, { coneOnly }, true);
}

/** The document with other diameters of the cone and port of its close position. */
export function withPortSize(document: SessionDocument, size: Partial<PortSize>): SessionDocument {
  const { port } = document.position.close ?? {};
  return port ? hearClose(document, { port: { ...port, ...size } }, false) : document;
}

function hearClose(
  document: SessionDocument,
  change: Partial<CloseTo>,
  readAgain: boolean,
): SessionDocument {
  const { id, close } = document.position;
  if (!close) return document;
  const told = (position: Position): Position =>
    position.id === id ? { ...position, close: { ...close, ...change } } : position;
  return {
    ...document,
    position: told(document.position),
    takes: document.takes.map((take) =>
      take.position.id === id
        ? { ...take, position: told(take.position), ...(readAgain ? { outdated: true } : {}) }
        : take,
    ),
  };
}

/** A usual woofer and port, m, until others are typed. */
export const usualPort: PortSize = { coneMetres: 0.13, portMetres: 0.05 };
