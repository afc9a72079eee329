/** A line in the chart that can be moved along the frequency axis in steps. */
export interface ChartHandle {
  readonly id: string;
  /** What it sets, for who cannot see it. */
  readonly label: string;
  /** Beside the line, such as “crossover 80 Hz”. */
  readonly text: string;
  readonly hz: number;
  /** Where it may go, rising. */
  readonly stepsHz: readonly number[];
  /** Where it would stand as proposed; null when that is where it stands. */
  readonly proposedHz: number | null;
  /** Handles at different ends never lie on each other. */
  readonly end: 'bottom' | 'top';
}

/** A move of a handle; `done` once pointer or key let it go. */
export interface HandleMove {
  readonly id: string;
  readonly value: number;
  readonly done: boolean;
}

declare global {
  interface HTMLElementEventMap {
    'll-move': CustomEvent<HandleMove>;
  }
}
