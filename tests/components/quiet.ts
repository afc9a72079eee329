import { afterEach, beforeEach, expect } from 'vitest';

/** Fails a test that leaves a console warning, a console error or an unhandled rejection behind. */
export function expectQuiet(): void {
  const heard: string[] = [];
  const original = { warn: console.warn, error: console.error };
  const hearError = (event: ErrorEvent): void => void heard.push(`error: ${event.message}`);
  const hearRejection = (event: PromiseRejectionEvent): void =>
    void heard.push(`unhandled rejection: ${String(event.reason)}`);

  beforeEach(() => {
    heard.length = 0;
    console.warn = (...words: unknown[]) => void heard.push(`warning: ${words.join(' ')}`);
    console.error = (...words: unknown[]) => void heard.push(`error: ${words.join(' ')}`);
    window.addEventListener('error', hearError);
    window.addEventListener('unhandledrejection', hearRejection);
  });

  afterEach(async () => {
    await new Promise((resolve) => setTimeout(resolve));
    console.warn = original.warn;
    console.error = original.error;
    window.removeEventListener('error', hearError);
    window.removeEventListener('unhandledrejection', hearRejection);
    expect(heard).toEqual([]);
  });
}
