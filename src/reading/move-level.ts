/** A level, dB, and its 90 % interval, as a reading holds them. */
export interface MovableLevel {
  readonly levelDb: number | null;
  readonly levelInterval?: readonly [number, number] | null | undefined;
}

/** The same level by so many dB higher; its interval goes with it, where there is one. */
export function moveLevel({ levelDb, levelInterval }: MovableLevel, db: number): MovableLevel {
  return {
    levelDb: levelDb === null ? null : levelDb + db,
    ...(levelInterval === undefined ? {} : { levelInterval: shifted(levelInterval, db) }),
  };
}

/**
 * A level moved by how much higher `to` is than `from`, all of them uncertain on their own: their
 * deviations add in power. Null when `to` or `from` is not known; no interval when one has none.
 */
export function moveLevelBetween(
  level: MovableLevel,
  from: MovableLevel,
  to: MovableLevel,
): MovableLevel | null {
  if (from.levelDb === null || to.levelDb === null) return null;
  const moved = moveLevel(level, to.levelDb - from.levelDb);
  if (moved.levelDb === null || !moved.levelInterval) return moved;
  const [own, its, theirs] = [level, from, to].map(sidesOf);
  if (!own || !its || !theirs) return { ...moved, levelInterval: null };
  return {
    levelDb: moved.levelDb,
    levelInterval: [
      moved.levelDb - Math.hypot(own.under, its.over, theirs.under),
      moved.levelDb + Math.hypot(own.over, its.under, theirs.over),
    ],
  };
}

/** Half the width of a level's 90 % interval, dB; null without one. */
export function levelHalfDb({ levelInterval }: MovableLevel): number | null {
  return levelInterval ? (levelInterval[1] - levelInterval[0]) / 2 : null;
}

/** How far the ends of an interval lie from its level; null without one. */
function sidesOf({ levelDb, levelInterval }: MovableLevel): { under: number; over: number } | null {
  if (levelDb === null || !levelInterval) return null;
  return { under: levelDb - levelInterval[0], over: levelInterval[1] - levelDb };
}

function shifted(
  interval: readonly [number, number] | null,
  db: number,
): readonly [number, number] | null {
  return interval && [interval[0] + db, interval[1] + db];
}
