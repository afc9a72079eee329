import { localeInForce } from './locale-in-force';

/** "25 November 2026, 14:05", in the clock of this computer and the order of the region. */
export function dateText(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return 'a time nobody noted';
  return `${dayOf(date)}, ${timeOf(date)}`;
}

/** "25 November 2026". */
export function dayText(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime()) ? 'a day nobody noted' : dayOf(date);
}

function dayOf(date: Date): string {
  return write(date, { day: 'numeric', month: 'long', year: 'numeric' });
}

function timeOf(date: Date): string {
  return write(date, { timeStyle: 'short' });
}

function write(date: Date, options: Intl.DateTimeFormatOptions): string {
  const how = { ...options, numberingSystem: 'latn', calendar: 'gregory' };
  return new Intl.DateTimeFormat(localeInForce().dates, how).format(date);
}
