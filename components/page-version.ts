/** The version this page carries, such as "0.1.0+1a2b3c4d"; null where it was not built. */
export function pageVersion(): string | null {
  return document.querySelector<HTMLMetaElement>('meta[name="version"]')?.content ?? null;
}
