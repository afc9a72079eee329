import { msg } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';

export type PatchSheetId = 'sheet' | 'wiring' | 'ear' | 'walk' | 'in-force';

export const patchSheetNames: Readonly<Record<PatchSheetId, string>> = {
  get sheet() {
    return msg('Processor');
  },
  get wiring() {
    return msg('Wiring');
  },
  get ear() {
    return msg('Ear check');
  },
  get walk() {
    return msg('Walk check');
  },
  get 'in-force'() {
    return msg('In force');
  },
};

/** In the order a tuner walks through them. */
export const patchSheetOrder: readonly PatchSheetId[] = [
  'sheet',
  'wiring',
  'ear',
  'walk',
  'in-force',
];

/** The sheet a location hash such as #patch/ear names; null when it names none. */
export function patchSheetFromHash(hash: string): PatchSheetId | null {
  const [stage, name] = hash.replace(/^#/, '').split('/');
  if (stage !== 'patch') return null;
  return patchSheetOrder.find((id) => id === name) ?? null;
}

/** Address of a sheet, for a link. */
export function patchSheetAddress(sheet: PatchSheetId): string {
  return `#patch/${sheet}`;
}

/** Where Patch begins: with the processor until one is chosen. */
export function firstPatchSheet({ document }: BenchState): PatchSheetId {
  return document.sheet === null ? 'sheet' : 'wiring';
}
