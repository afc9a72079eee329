import type { SessionDocument } from './document';

/** Ids of all captures a session names, in the order of its takes. */
export function captureIdsOf({ takes }: SessionDocument): string[] {
  return takes.flatMap(({ captureId, loopbackId }) =>
    loopbackId === null ? [captureId] : [captureId, loopbackId],
  );
}
