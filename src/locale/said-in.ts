import { localeInForce } from './locale-in-force';

/** What sentences are written in now: language, units and decimal mark, such as "en metric en-GB". */
export function saidIn(): string {
  const { language, units, numbers } = localeInForce();
  return `${language} ${units} ${numbers}`;
}
