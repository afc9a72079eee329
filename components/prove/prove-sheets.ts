import { msg } from '@lit/localize';
export type ProveSheetId = 'proof' | 'handover' | 'visits';

export const proveSheetNames: Readonly<Record<ProveSheetId, string>> = {
  get proof() {
    return msg('Proof');
  },
  get handover() {
    return msg('Handover');
  },
  get visits() {
    return msg('Earlier visit');
  },
};

/** In the order a tuner walks through them. */
export const proveSheetOrder: readonly ProveSheetId[] = ['proof', 'handover', 'visits'];

/** The sheet a location hash such as #prove/handover names; null when it names none. */
export function proveSheetFromHash(hash: string): ProveSheetId | null {
  const [stage, name] = hash.replace(/^#/, '').split('/');
  if (stage !== 'prove') return null;
  return proveSheetOrder.find((id) => id === name) ?? null;
}

/** Address of a sheet, for a link. */
export function proveSheetAddress(sheet: ProveSheetId): string {
  return `#prove/${sheet}`;
}
