import { msg } from '@lit/localize';
export type ProposeSheetId = 'crossovers' | 'subs' | 'bass' | 'compare' | 'equaliser' | 'list';

export const proposeSheetNames: Readonly<Record<ProposeSheetId, string>> = {
  get crossovers() {
    return msg('Crossovers');
  },
  get subs() {
    return msg('Subs');
  },
  get bass() {
    return msg('Bass');
  },
  get compare() {
    return msg('Compare');
  },
  get equaliser() {
    return msg('Equaliser');
  },
  get list() {
    return msg('List');
  },
};

/** In the order a tuner walks through them; the list to type comes before what is last in order. */
export const proposeSheetOrder: readonly ProposeSheetId[] = [
  'crossovers',
  'subs',
  'bass',
  'compare',
  'list',
  'equaliser',
];

/** The sheet a location hash such as #propose/list names; null when it names none. */
export function proposeSheetFromHash(hash: string): ProposeSheetId | null {
  const [stage, name] = hash.replace(/^#/, '').split('/');
  if (stage !== 'propose') return null;
  return proposeSheetOrder.find((id) => id === name) ?? null;
}

/** Address of a sheet, for a link. */
export function proposeSheetAddress(sheet: ProposeSheetId): string {
  return `#propose/${sheet}`;
}
