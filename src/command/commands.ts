import type { Command } from './command';
import { practiceCommand } from './practice';
import { proposeCommand } from './propose';
import { proveCommand } from './prove';
import { readCommand } from './read';
import { stimulusCommand } from './stimulus';
import { visitsCommand } from './visits';
import { wiringCommand } from './wiring';

/** All that the bench does from a terminal. */
export const commands: readonly Command[] = [
  stimulusCommand,
  readCommand,
  proposeCommand,
  proveCommand,
  visitsCommand,
  practiceCommand,
  wiringCommand,
];
