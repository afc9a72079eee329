import { msg } from '@lit/localize';
import { localeInForce } from './locale-in-force';

/** "25 November 2026, 14:05", in the clock of this computer and the order of the region. */
export function dateText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return msg('a time nobody noted');
  return write(date);
}

/** "25 November 2026, 14:05 UTC", for records that are read elsewhere; what is no time stays. */
export function utcText(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime()) ? iso : `${write(date, 'UTC')}\u00a0UTC`;
}

function write(date: Date, timeZone?: 'UTC'): string {
  const how = (options: Intl.DateTimeFormatOptions): string =>
    new Intl.DateTimeFormat(localeInForce().dates, {
      ...options,
      ...(timeZone && { timeZone }),
      numberingSystem: 'latn',
      calendar: 'gregory',
    }).format(date);
  const day = how({ day: 'numeric', month: 'long', year: 'numeric' });
  return `${day}, ${how({ timeStyle: 'short' })}`;
}
