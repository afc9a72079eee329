/** Straight line through where periods began, in pieces that each have their own offset. */
export interface DriftLine {
  /** Period `index` began at `position`, capture frames. */
  add(index: number, position: number): void;
  /** What comes is no longer in line with what was: audio went missing. */
  breakLine(): void;
  /** Capture frames a period; null until one piece holds two periods. */
  slope(): number | null;
}

/** What each new period leaves of the older ones' weight: clocks drift as they warm up. */
const memory = 0.98;

/** Least squares with one slope for all pieces and exponential forgetting. */
export function createDriftLine(): DriftLine {
  let weight = 0;
  let meanX = 0;
  let meanY = 0;
  let xx = 0;
  let xy = 0;
  return {
    add(index, position) {
      weight = memory * weight + 1;
      xx *= memory;
      xy *= memory;
      const dx = index - meanX;
      const dy = position - meanY;
      meanX += dx / weight;
      meanY += dy / weight;
      if (weight > 1) {
        xx += dx * dx * (1 - 1 / weight);
        xy += dx * dy * (1 - 1 / weight);
      }
    },
    breakLine() {
      weight = 0;
      meanX = 0;
      meanY = 0;
    },
    slope: () => (xx > 0 ? xy / xx : null),
  };
}
