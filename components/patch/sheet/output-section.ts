import { msg, str } from '@lit/localize';
import { html } from 'lit';
import type { Typed } from './draft-field';
import {
  addButton,
  addTo,
  moveIn,
  namesField,
  removeButton,
  removeFrom,
  rolesField,
  textField,
  type DraftPen,
} from './draft-pen';
import { holds, listAt, valueAt, withRenamedOutput, type DraftPath } from './sheet-draft';

const outputs: DraftPath = ['outputs'];

/** Outputs in the order of the processor's back, what each can carry, and which go in pairs. */
export function outputSection(pen: DraftPen) {
  const rows = listAt(pen.draft, outputs);
  return html`<section class="part" aria-labelledby="outputs">
      <h3 id="outputs">${msg('Outputs, in the order of the processor’s back')}</h3>
      <p class="soft small">
        ${msg('An id is what the rules below call the output; the name is what its socket says. Roles stand in order of preference with commas between; “TpBL unless BL or BR” is open only in a layout without those.')}
      </p>
      ${rows.map((_, index) => outputRow(pen, index, rows.length))}
      ${addButton(msg('Add an output'), () => addTo(pen, outputs, newOutput(rows)))}
    </section>
    <section class="part" aria-labelledby="pairs">
      <h3 id="pairs">${msg('Outputs in pairs')}</h3>
      <p class="soft small">
        ${msg('Ids of two outputs that carry left and right of one pair together, or nothing.')}
      </p>
      ${listAt(pen.draft, ['pairs']).map(
        (_, index) =>
          html`<div class="row">
            ${namesField(pen, ['pairs', index], { label: msg(str`Pair ${index + 1}`), bare: true })}
            ${removeButton(msg(str`pair ${index + 1}`), () => removeFrom(pen, ['pairs'], index))}
          </div>`,
      )}
      ${addButton(msg('Add a pair'), () => addTo(pen, ['pairs'], []))}
    </section>`;
}

function outputRow(pen: DraftPen, index: number, count: number) {
  const number = index + 1;
  const at = (name: string): DraftPath => ['outputs', index, name];
  const before = String(valueAt(pen.draft, at('id')) ?? '');
  return html`<div class="row output ${holds(['outputs', index], pen.finding) ? 'bad' : ''}">
    <div class="id" @focusin=${remember(before)} @ll-typed=${rename(pen, index)}>
      ${textField(pen, at('id'), { label: msg('Id') })}
    </div>
    ${textField(pen, at('name'), { label: msg('Name') })}
    ${rolesField(pen, at('roles'), { label: msg('Roles') })}
    <span class="tools">
      <button
        class="ghost tool"
        aria-label=${msg(str`Move output ${number} back`)}
        title=${msg('Nearer to the beginning')}
        ?disabled=${index === 0}
        @click=${() => moveIn(pen, outputs, index, -1)}
      >
        ↑
      </button>
      <button
        class="ghost tool"
        aria-label=${msg(str`Move output ${number} on`)}
        title=${msg('Nearer to the end')}
        ?disabled=${number === count}
        @click=${() => moveIn(pen, outputs, index, 1)}
      >
        ↓
      </button>
      ${removeButton(msg(str`output ${number}`), () => removeFrom(pen, outputs, index))}
    </span>
  </div>`;
}

/** The id a field held when it was entered, for what names the output by it. */
const entered = new WeakMap<EventTarget, string>();

function remember(id: string) {
  return (event: FocusEvent): void => {
    if (event.currentTarget) entered.set(event.currentTarget, id);
  };
}

/** Once another id is typed to its end, the rules that named the output follow it. */
function rename(pen: DraftPen, index: number) {
  return (event: CustomEvent<Typed>): void => {
    const { text, done } = event.detail;
    const before = event.currentTarget ? entered.get(event.currentTarget) : undefined;
    if (!done || before === undefined || before === text) return;
    const others = listAt(pen.draft, outputs).filter((_, at) => at !== index);
    if (others.some((one) => [before, text].includes(String(valueAt(one, ['id']))))) return;
    pen.change(withRenamedOutput(pen.draft, before, text));
  };
}

function newOutput(rows: readonly unknown[]): unknown {
  const ids = rows.map((row) => valueAt(row, ['id']));
  let number = rows.length + 1;
  while (ids.includes(String(number))) number++;
  return { id: String(number), name: msg(str`Output ${number}`), roles: [{ channel: 'FL' }] };
}
