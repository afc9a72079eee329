import { msg, str } from '@lit/localize';
import { html } from 'lit';
import '../../controls/check-field';
import './draft-field';
import type { Typed } from './draft-field';
import {
  readLabel,
  readNames,
  readNumbers,
  readOne,
  readChain,
  writeChain,
  writeNames,
  writeNumbers,
  writeOne,
} from './list-text';
import { readGroups, writeGroups } from './group-text';
import { readRoles, writeRoles } from './role-text';
import {
  holds,
  listAt,
  valueAt,
  withValue,
  type Draft,
  type DraftFinding,
  type DraftPath,
} from './sheet-draft';

/** What a section of the editor writes with: the draft, what is wrong with it, the way to change it. */
export interface DraftPen {
  readonly draft: Draft;
  readonly finding: DraftFinding | null;
  change(draft: Draft): void;
}

interface FieldWords {
  readonly label: string;
  readonly unit?: string;
  readonly hint?: string;
  readonly bare?: boolean;
}

function field(
  pen: DraftPen,
  path: DraftPath,
  words: FieldWords,
  text: string,
  numeric: boolean,
  read: (text: string) => unknown,
) {
  return html`<ll-draft-field
    label=${words.label}
    unit=${words.unit ?? ''}
    hint=${words.hint ?? ''}
    ?bare=${words.bare ?? false}
    ?numeric=${numeric}
    .text=${text}
    .wrong=${holds(path, pen.finding) ? (pen.finding?.sentence ?? '') : ''}
    @ll-typed=${(event: CustomEvent<Typed>) =>
      pen.change(withValue(pen.draft, path, read(event.detail.text)))}
  ></ll-draft-field>`;
}

function textAt(pen: DraftPen, path: DraftPath): string {
  const value = valueAt(pen.draft, path);
  return typeof value === 'string' || typeof value === 'number' ? writeOne(value) : '';
}

export function textField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, textAt(pen, path), false, (text) => text);
}

export function numberField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, textAt(pen, path), true, readOne);
}

export function numbersField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeNumbers(listAt(pen.draft, path)), true, readNumbers);
}

export function labelsField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeNames(listAt(pen.draft, path)), false, (text) =>
    readNames(text).map(readLabel),
  );
}

/** Ids of outputs; `absent` is what an empty field stands for. */
export function namesField(
  pen: DraftPen,
  path: DraftPath,
  words: FieldWords,
  absent: unknown = [],
) {
  return field(pen, path, words, writeNames(listAt(pen.draft, path)), false, (text) => {
    const names = readNames(text);
    return names.length === 0 ? absent : names;
  });
}

export function groupsField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeGroups(listAt(pen.draft, path)), false, readGroups);
}

export function rolesField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeRoles(listAt(pen.draft, path)), false, readRoles);
}

export function channelChainField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeChain(listAt(pen.draft, path)), false, (text) =>
    readChain(text).map((stage) => stage.map(readLabel)),
  );
}

export function outputChainField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return field(pen, path, words, writeChain(listAt(pen.draft, path)), false, readChain);
}

export function flagField(pen: DraftPen, path: DraftPath, words: FieldWords) {
  return html`<ll-check
    label=${words.label}
    hint=${words.hint ?? ''}
    .checked=${valueAt(pen.draft, path) === true}
    @ll-check=${(event: CustomEvent<boolean>) =>
      pen.change(withValue(pen.draft, path, event.detail))}
  ></ll-check>`;
}

/** One of a few values; each option's words stand for its value. */
export function pickField<Value>(
  pen: DraftPen,
  path: DraftPath,
  label: string,
  options: readonly (readonly [words: string, value: Value])[],
) {
  const now = JSON.stringify(valueAt(pen.draft, path));
  const found = options.findIndex(([, value]) => JSON.stringify(value) === now);
  return html`<label class="select">
    <span>${label}</span>
    <select
      aria-invalid=${holds(path, pen.finding) ? 'true' : 'false'}
      @change=${(event: Event) => {
        const chosen = options[(event.currentTarget as HTMLSelectElement).selectedIndex];
        if (chosen) pen.change(withValue(pen.draft, path, chosen[1]));
      }}
    >
      ${options.map(
        ([words], index) => html`<option .selected=${index === found}>${words}</option>`,
      )}
    </select>
  </label>`;
}

export function addTo(pen: DraftPen, path: DraftPath, item: unknown): void {
  pen.change(withValue(pen.draft, path, [...listAt(pen.draft, path), item]));
}

export function removeFrom(pen: DraftPen, path: DraftPath, index: number): void {
  const kept = listAt(pen.draft, path).filter((_, at) => at !== index);
  pen.change(withValue(pen.draft, path, kept));
}

/** Moves an item of a list one place on or back. */
export function moveIn(pen: DraftPen, path: DraftPath, index: number, by: 1 | -1): void {
  const list = [...listAt(pen.draft, path)];
  const [item] = list.splice(index, 1);
  list.splice(index + by, 0, item);
  pen.change(withValue(pen.draft, path, list));
}

export function addButton(words: string, add: () => void) {
  return html`<button class="ghost add" @click=${add}>${words}</button>`;
}

export function removeButton(what: string, remove: () => void) {
  return html`<button
    class="ghost tool"
    aria-label=${msg(str`Remove ${what}`)}
    title=${msg(str`Remove ${what}`)}
    @click=${remove}
  >
    ×
  </button>`;
}
