/**
 * Says the version the page carries (`0.1.0+1a2b3c4d`: version and build, as Semantic Versioning
 * 2.0.0, clause 10, writes build metadata). Anything else comes from a page that was not built.
 */
import { msg, str } from '@lit/localize';
export function versionWords(version: string | null): string {
  const parts = /^(\d+\.\d+\.\d+[^+]*)\+([0-9a-f]{8})$/.exec(version ?? '');
  return parts ? msg(str`Version ${parts[1]}, build ${parts[2]}`) : msg('A version in development');
}
