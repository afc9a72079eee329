/**
 * The path, within the folder the app is served from, that a request asks for: `index.html` for the
 * folder itself, without query and fragment. Null for what is no GET or lies outside of `scope`,
 * the folder's whole address with its slash at the end.
 */
export function keptPath(
  { method, url }: Pick<Request, 'method' | 'url'>,
  scope: string,
): string | null {
  if (method !== 'GET') return null;
  const { origin, pathname } = new URL(url);
  const address = origin + pathname;
  if (!address.startsWith(scope)) return null;
  return address === scope ? 'index.html' : address.slice(scope.length);
}
