/**
 * What a key asks of the history: Ctrl or Cmd with Z undoes, with Shift as well, or with Y, it does
 * again. Null for every other key, and inside a text field, which has a history of its own.
 */
export function historyKey(event: KeyboardEvent): 'undo' | 'redo' | null {
  const { ctrlKey, metaKey, altKey, shiftKey } = event;
  if (ctrlKey === metaKey || altKey || isTextField(event.composedPath()[0])) return null;
  const key = event.key.toLowerCase();
  if (key === 'z') return shiftKey ? 'redo' : 'undo';
  return key === 'y' && !shiftKey ? 'redo' : null;
}

/** Kinds of input in which nothing is typed. */
const untyped = [
  'button',
  'checkbox',
  'color',
  'file',
  'image',
  'radio',
  'range',
  'reset',
  'submit',
];

function isTextField(target: EventTarget | undefined): boolean {
  if (target instanceof HTMLInputElement) return !untyped.includes(target.type);
  if (target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLElement && target.isContentEditable;
}
