import { msg, str } from '@lit/localize';
import { html } from 'lit';
import {
  addButton,
  addTo,
  channelChainField,
  labelsField,
  namesField,
  outputChainField,
  pickField,
  removeButton,
  removeFrom,
  textField,
  type DraftPen,
} from './draft-pen';
import { listAt, type DraftPath } from './sheet-draft';

const channelChains: DraftPath = ['filling', 'channels'];
const outputChains: DraftPath = ['filling', 'outputs'];

/** Rules of wiring beside what each output carries. */
export function ruleSections(pen: DraftPen) {
  return html`<section class="part" aria-labelledby="exclusive">
      <h3 id="exclusive">${msg('Exclusive choices')}</h3>
      <p class="soft small">
        ${msg('At most one choice of a set is in use: it is as soon as one of its outputs carries one of its channels. Without outputs, any output counts.')}
      </p>
      ${listAt(pen.draft, ['exclusive']).map((_, index) => exclusiveSet(pen, index))}
      ${addButton(msg('Add a set of choices'), () =>
        addTo(pen, ['exclusive'], { name: msg('One of these'), choices: [newChoice, newChoice] }),
      )}
    </section>
    <section class="part" aria-labelledby="filling">
      <h3 id="filling">${msg('Order of filling')}</h3>
      <p class="soft small">
        ${msg('Stages from first to last with “>” between: a stage is used only when all of every earlier stage is, such as “FL, FR > SiL, SiR > BL, BR”.')}
      </p>
      ${chains(pen, channelChains, msg('channels'), channelChainField)}
      ${chains(pen, outputChains, msg('outputs'), outputChainField)}
    </section>
    <section class="part" aria-labelledby="naming">
      <h3 id="naming">${msg('What height pairs are called, from front to back')}</h3>
      <div class="fields">
        ${pickField(pen, ['heightNaming', '1'], msg('One pair'), [
          [msg('does not fit'), undefined],
          [msg('front'), ['front']],
          [msg('middle'), ['middle']],
          [msg('back'), ['back']],
        ])}
        ${pickField(pen, ['heightNaming', '2'], msg('Two pairs'), [
          [msg('do not fit'), undefined],
          [msg('front, middle'), ['front', 'middle']],
          [msg('front, back'), ['front', 'back']],
          [msg('middle, back'), ['middle', 'back']],
        ])}
        ${pickField(pen, ['heightNaming', '3'], msg('Three pairs'), [
          [msg('do not fit'), undefined],
          [msg('front, middle, back'), ['front', 'middle', 'back']],
        ])}
      </div>
    </section>`;
}

const newChoice = { channels: [] };

function exclusiveSet(pen: DraftPen, index: number) {
  const set: DraftPath = ['exclusive', index];
  const choices: DraftPath = [...set, 'choices'];
  return html`<div class="group">
    <div class="row">
      ${textField(pen, [...set, 'name'], { label: msg(str`Name of set ${index + 1}`) })}
      ${removeButton(msg(str`set ${index + 1}`), () => removeFrom(pen, ['exclusive'], index))}
    </div>
    ${listAt(pen.draft, choices).map(
      (_, at) =>
        html`<div class="row two">
          ${labelsField(pen, [...choices, at, 'channels'], { label: msg(str`Choice ${at + 1}: channels`) })}
          ${namesField(pen, [...choices, at, 'outputs'], { label: msg('On outputs') }, undefined)}
          ${removeButton(msg(str`choice ${at + 1} of set ${index + 1}`), () => removeFrom(pen, choices, at))}
        </div>`,
    )}
    ${addButton(msg('Add a choice'), () => addTo(pen, choices, newChoice))}
  </div>`;
}

function chains(pen: DraftPen, path: DraftPath, what: string, field: typeof outputChainField) {
  return html`${listAt(pen.draft, path).map(
    (_, index) =>
      html`<div class="row">
        ${field(pen, [...path, index], { label: msg(str`Chain ${index + 1} of ${what}`) })}
        ${removeButton(msg(str`chain ${index + 1} of ${what}`), () => removeFrom(pen, path, index))}
      </div>`,
  )}
  ${addButton(msg(str`Add a chain of ${what}`), () => addTo(pen, path, []))}`;
}
