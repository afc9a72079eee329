import { createMemory } from '../../probe/memory';

export type WorkbenchZoom = 'low end' | 'about the crossover' | 'whole bass';

/** What the tuner looks at in the workbench; kept until the page is closed. */
export interface WorkbenchWishes {
  readonly zoom: WorkbenchZoom;
  /** Decibels from top to bottom. */
  readonly spanDb: 24 | 42;
  readonly filters: boolean;
  readonly seats: boolean;
}

const first: WorkbenchWishes = { zoom: 'whole bass', spanDb: 42, filters: true, seats: true };

export const workbenchWishes = createMemory<WorkbenchWishes>(() => first);
