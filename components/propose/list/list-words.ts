import { msg, str } from '@lit/localize';
import { settingsList, shownText, type SettingsLine } from '../../../src/proposal/settings-list';
import type { SessionDocument } from '../../../src/session/document';
import type { TitleAndLede } from '../../probe/probe-title';
import { groupName } from '../group-words';
import type { ProposeView } from '../propose-view';

export const sectionNames: Readonly<Record<SettingsLine['section'], string>> = {
  get crossovers() {
    return msg('Crossovers');
  },
  get distances() {
    return msg('Distances');
  },
  get levels() {
    return msg('Levels');
  },
  get subs() {
    return msg('Subs');
  },
};

/** The lines to type, as the processor orders them. */
export function listOf(
  { proposal, layout }: Pick<ProposeView, 'proposal' | 'layout'>,
  { sheet, typed }: Pick<SessionDocument, 'sheet' | 'typed'>,
): SettingsLine[] {
  return settingsList(proposal, layout, sheet, typed);
}

/** What a line is called on screen. */
export function lineName(line: SettingsLine, layout: ProposeView['layout']): string {
  return line.group === null ? line.name : groupName(line.group, layout);
}

/** The first line that is still to be typed; null when none is. */
export function nextLine(lines: readonly SettingsLine[]): SettingsLine | null {
  return lines.find(({ text, ticked }) => text !== null && !ticked) ?? null;
}

/** How far the typing is, and what comes next. */
export function listTitle(
  lines: readonly SettingsLine[],
  layout: ProposeView['layout'],
): TitleAndLede {
  const known = lines.filter(({ text }) => text !== null);
  const ticked = known.filter((line) => line.ticked);
  const changed = known.filter(({ before }) => before !== null);
  const next = nextLine(lines);
  if (!next) {
    return {
      title: known.length === 0 ? msg('Nothing to type yet') : msg('Everything is typed'),
      lede: known.length === 0 ? '' : msg('Measure again under Prove to see that it works.'),
    };
  }
  const where = sectionNames[next.section].toLowerCase();
  const since =
    changed.length === 0 ? '' : msg(str` ${changed.length} changed since they were typed.`);
  return {
    title: msg(str`${ticked.length} of ${known.length} settings are typed`),
    lede: msg(
      str`Next: ${where}, ${lineName(next, layout)}, ${shownText(next.text ?? '')}.${since}`,
    ),
  };
}

/** The list as tab-separated text with plain signs. */
export function listCopy(lines: readonly SettingsLine[], layout: ProposeView['layout']): string {
  const rows = lines.map((line) =>
    [sectionNames[line.section], lineName(line, layout), line.text ?? ''].join('\t'),
  );
  return `part\tname\tvalue\n${rows.join('\n').replaceAll('\u2212', '-')}\n`;
}
