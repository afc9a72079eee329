/** Ends the task at hand and goes on in another: messages, keys and drawing come in between. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
