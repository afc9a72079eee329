import type { InspectRequest } from './inspection';

/** The takes a request needs the sound of, each once. */
export function takesOf(request: InspectRequest): string[] {
  const sources = 'sources' in request ? request.sources : [request.source];
  return [...new Set(sources.map(({ takeId }) => takeId))];
}
