import { msg } from '@lit/localize';

/** States that records keep by these English names, whatever language they are shown in. */
const words = {
  'as it was': () => msg('as it was'),
  'at the speakers': () => msg('at the speakers'),
  'cannot tell': () => msg('cannot tell'),
  changed: () => msg('changed'),
  closed: () => msg('closed'),
  fail: () => msg('fail'),
  'full range': () => msg('full range'),
  inverted: () => msg('inverted'),
  normal: () => msg('normal'),
  'not known': () => msg('not known'),
  'not noted': () => msg('not noted'),
  off: () => msg('off'),
  on: () => msg('on'),
  pass: () => msg('pass'),
  up: () => msg('up'),
  vented: () => msg('vented'),
} as const;

export type StateName = keyof typeof words;

/** A state in the language in force. */
export function stateWord(state: StateName): string {
  return words[state]();
}

/** True for a text that is the name of a state. */
export function isStateName(text: string): text is StateName {
  return Object.hasOwn(words, text);
}
