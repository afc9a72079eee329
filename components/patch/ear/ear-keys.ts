/** What a key does in the ear check. */
export type EarAction = 'here' | 'elsewhere' | 'silent' | 'again' | 'back' | 'next';

const actions: Readonly<Record<string, EarAction>> = {
  h: 'here',
  e: 'elsewhere',
  s: 'silent',
  r: 'again',
  b: 'back',
  ' ': 'next',
  Enter: 'next',
};

/** The action of a key press; null for keys that mean something where they are pressed. */
export function earAction(event: KeyboardEvent): EarAction | null {
  if (isTaken(event)) return null;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const action = actions[key] ?? null;
  return action === 'next' && onControl(event) ? null : action;
}

/** The digit of a key press, where digits are free; null for any other. */
export function earDigit(event: KeyboardEvent): string | null {
  return !isTaken(event) && /^\d$/.test(event.key) ? event.key : null;
}

function isTaken(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.repeat) return true;
  if (event.ctrlKey || event.metaKey || event.altKey) return true;
  return targetOf(event)?.matches('input, select, textarea') ?? false;
}

/** Space and Enter press what has the focus. */
function onControl(event: KeyboardEvent): boolean {
  return targetOf(event)?.matches('button, a, summary') ?? false;
}

function targetOf(event: KeyboardEvent): Element | null {
  const [target] = event.composedPath();
  return target instanceof Element ? target : null;
}
