import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../../../src/system/channel';
import type { OutputRole } from '../../../src/system/sheet/processor-sheet';
import { layoutOrder } from '../../../src/system/layout';

/** Names with commas between; one that holds a comma, a ">" or a quotation mark stands in marks. */
export function writeNames(names: readonly unknown[]): string {
  return names.map((name) => quoted(String(name))).join(', ');
}

export function readNames(text: string): string[] {
  return split(text, ',')
    .map(unquoted)
    .filter((name) => name !== '');
}

/** Stages with ">" between, in the order in which they fill. */
export function writeChain(chain: readonly unknown[]): string {
  return chain
    .map((stage) => (Array.isArray(stage) ? writeNames(stage) : String(stage)))
    .join(' > ');
}

export function readChain(text: string): string[][] {
  return text.trim() === '' ? [] : split(text, '>').map(readNames);
}

/** "BL, TpBL unless BL or BR": roles in their order. */
export function writeRoles(roles: readonly unknown[]): string {
  return (roles as readonly OutputRole[])
    .map(({ channel, onlyWithout }) =>
      onlyWithout ? msg(str`${channel} unless ${onlyWithout.join(' or ')}`) : channel,
    )
    .join(', ');
}

export function readRoles(text: string): { channel: string; onlyWithout?: string[] }[] {
  return readNames(text).map((role) => {
    const [channel = '', without] = role.split(/\s+unless(?:\s+|$)/i);
    if (without === undefined) return { channel: readLabel(channel) };
    const labels = without.split(/\s+or\s+/i).map(readLabel);
    return { channel: readLabel(channel), onlyWithout: labels.filter((label) => label !== '') };
  });
}

/** A channel's label however it was typed; anything else as it stands, for the check to refuse. */
export function readLabel(text: string): ChannelLabel | (string & {}) {
  const plain = (label: string) => label.replace(/\s+/g, '').toLowerCase();
  return layoutOrder.find((label) => plain(label) === plain(text)) ?? text.trim();
}

/** Numbers with commas or blanks between; what is no number stays as text, for the check to refuse. */
export function readNumbers(text: string): (number | string)[] {
  return text
    .split(/[\s,;]+/)
    .filter((word) => word !== '')
    .map(readOne);
}

/** One number, with a decimal comma or point. */
export function readOne(text: string): number | string {
  const tidy = text.trim().replace(',', '.').replace('\u2212', '-');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : text.trim();
}

function quoted(name: string): string {
  return /[,>"]/.test(name) ? `"${name.replaceAll('"', '""')}"` : name;
}

function unquoted(text: string): string {
  const name = text.trim();
  const marked = /^"(.*)"$/s.exec(name);
  return marked ? (marked[1] ?? '').replaceAll('""', '"') : name;
}

/** Splits outside quotation marks. */
function split(text: string, separator: string): string[] {
  const parts = [''];
  let inside = false;
  for (const letter of text) {
    if (letter === '"') inside = !inside;
    if (letter === separator && !inside) parts.push('');
    else parts.push(`${parts.pop() ?? ''}${letter}`);
  }
  return parts;
}
