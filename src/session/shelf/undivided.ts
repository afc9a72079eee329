/** What was said to be saved outlives a power cut as well: it lies on the disk, in no buffer. */
export const onDisk = { durability: 'strict' } as const;

/**
 * Waits for a transaction; when its work fails nothing of it stays. Rejects with why the browser
 * ended it, where it did, rather than with what then failed in it.
 */
export async function undivided(
  tables: {
    readonly done: Promise<void>;
    readonly error: DOMException | null;
    abort(): void;
  },
  work: () => Promise<unknown>,
): Promise<void> {
  try {
    await work();
  } catch (error) {
    tables.done.catch(() => undefined);
    try {
      tables.abort();
    } catch {
      // It has ended by itself, which is as well.
    }
    throw tables.error ?? error;
  }
  await tables.done;
}
