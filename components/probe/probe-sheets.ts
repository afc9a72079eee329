import { msg } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';

export type SheetId = 'connect' | 'microphone' | 'level' | 'take' | 'noise' | 'inspect';

export const sheetNames: Readonly<Record<SheetId, string>> = {
  get connect() {
    return msg('Connect');
  },
  get microphone() {
    return msg('Microphone');
  },
  get level() {
    return msg('Level');
  },
  get take() {
    return msg('Take');
  },
  get noise() {
    return msg('Noise');
  },
  get inspect() {
    return msg('Inspect');
  },
};

/** In the order a tuner walks through them. */
export const sheetOrder: readonly SheetId[] = [
  'connect',
  'microphone',
  'level',
  'take',
  'noise',
  'inspect',
];

/** The sheet a location hash such as #probe/level names; null when it names none. */
export function sheetFromHash(hash: string): SheetId | null {
  const [stage, name] = hash.replace(/^#/, '').split('/');
  if (stage !== 'probe') return null;
  return sheetOrder.find((id) => id === name) ?? null;
}

/** Address of a sheet, for a link. */
export function sheetAddress(sheet: SheetId): string {
  return `#probe/${sheet}`;
}

/** Where Probe begins: at the wires when speakers are reached live and nothing was taken yet. */
export function firstSheet({ document }: BenchState): SheetId {
  return document.rig === 'live' && document.takes.length === 0 ? 'connect' : 'take';
}

/** The sheet on which what runs now is shown; null while nothing runs. */
export function sheetOfActivity({ activity }: BenchState): SheetId | null {
  switch (activity.kind) {
    case 'idle':
    case 'walking':
      return null;
    case 'noise':
      return 'noise';
    case 'climbing':
      return 'level';
    case 'playing':
    case 'waiting':
    case 'reading':
      return 'take';
  }
}
