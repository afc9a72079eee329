import type { SessionSummary } from './summarise-session';

/** A session as the list of sessions knows it. */
export interface StoredSession {
  readonly id: string;
  readonly name: string;
  /** Rises with every change of any session: clocks can be set back. */
  readonly order: number;
  /** Whether it is to be removed when the page that deleted it is left. */
  readonly deleted: boolean;
  /** Null when it cannot be opened. */
  readonly summary: SessionSummary | null;
  /** Why it cannot be opened; null when it can. */
  readonly problem: string | null;
}

/** Sessions in the order of a list: the one changed last first. */
export function inListOrder(sessions: readonly StoredSession[]): StoredSession[] {
  const created = ({ summary }: StoredSession): string => summary?.createdAt ?? '';
  return [...sessions].sort(
    (a, b) =>
      b.order - a.order ||
      compare(created(b), created(a)) ||
      compare(a.name, b.name) ||
      compare(a.id, b.id),
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
