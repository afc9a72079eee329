import type { SessionDocument } from './document';

/** What the processor of a session takes distances in: by its sheet, else by the steps in use. */
export function distanceUnitOf({
  sheet,
  processor,
}: Pick<SessionDocument, 'sheet' | 'processor'>): 'm' | 'ft' {
  return sheet?.distance.unit ?? processor.distanceUnit ?? 'm';
}
