import { msg, str } from '@lit/localize';
import type { Layout } from '../../src/system/channel';

const words: readonly (() => string)[] = [
  () => msg('no'),
  () => msg('one'),
  () => msg('two'),
  () => msg('three'),
  () => msg('four'),
  () => msg('five'),
  () => msg('six'),
  () => msg('seven'),
  () => msg('eight'),
  () => msg('nine'),
];

/** A small number in words, larger ones in figures. */
export function countInWords(count: number): string {
  return words[count]?.() ?? String(count);
}

/** "five speakers around the seat, two subs and four above" */
export function layoutInWords(layout: Layout): string {
  const count = (kind: string): number =>
    layout.channels.filter((channel) => channel.kind === kind).length;
  const where = layout.channels.some((one) => one.group === 'sides')
    ? msg('around the seat')
    : msg('in front');
  const parts = [msg(str`${countInWords(count('bed'))} speakers ${where}`)];
  const subs = count('sub');
  parts.push(subs === 1 ? msg('one sub') : msg(str`${countInWords(subs)} subs`));
  if (count('height') > 0) parts.push(msg(str`${countInWords(count('height'))} above`));
  const last = parts.pop() ?? '';
  return msg(str`${parts.join(', ')} and ${last}`);
}

/** A sentence begins with a capital. */
export function asSentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
