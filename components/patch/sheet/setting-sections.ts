import { msg, str } from '@lit/localize';
import { html } from 'lit';
import {
  addButton,
  addTo,
  flagField,
  groupsField,
  numberField,
  numbersField,
  pickField,
  removeButton,
  removeFrom,
  type DraftPen,
} from './draft-pen';
import { listAt, valueAt, type DraftPath } from './sheet-draft';
import { groupIds } from '../../../src/system/group-ids';
import { groupWord } from '../../../src/system/group-word';

const groupOptions = () => groupIds.map((group) => [groupWord(group), group] as const);
const families = [
  ['Butterworth', 'Butterworth'],
  ['Linkwitz-Riley', 'Linkwitz-Riley'],
] as const;
const limits: DraftPath = ['crossover', 'limits'];
const fullRange: DraftPath = ['fullRange'];

/** Steps, ranges and filters of the processor's settings. */
export function settingSections(pen: DraftPen) {
  const unit = valueAt(pen.draft, ['distance', 'unit']) === 'ft' ? 'ft' : 'm';
  return html`<section class="part" aria-labelledby="crossover">
      <h3 id="crossover">${msg('Crossover')}</h3>
      ${numbersField(pen, ['crossover', 'stepsHz'], { label: msg('Steps, from low to high'), unit: 'Hz' })}
      <div class="fields">
        ${pickField(pen, ['crossover', 'setting'], msg('Set'), [
          [msg('for each group'), 'per group'],
          [msg('once for all'), 'one for all'],
        ])}
      </div>
      ${listAt(pen.draft, limits).map((_, index) => limitRow(pen, index))}
      ${addButton(msg('Add a limit for some groups'), () =>
        addTo(pen, limits, { groups: ['front heights'], lowHz: 60, highHz: 200 }),
      )}
    </section>
    <section class="part" aria-labelledby="full">
      <h3 id="full">${msg('Full range')}</h3>
      <p class="soft small">
        ${msg(str`Groups that can run without a high-pass, and those that can only once such a group does: ${groupIds.map(groupWord).join(', ')}.`)}
      </p>
      ${listAt(pen.draft, fullRange).map(
        (_, index) =>
          html`<div class="row two">
            ${pickField(pen, [...fullRange, index, 'group'], msg('Group'), groupOptions())}
            ${groupsField(pen, [...fullRange, index, 'unlocks'], { label: msg('Unlocks') })}
            ${removeButton(msg(str`full range ${index + 1}`), () => removeFrom(pen, fullRange, index))}
          </div>`,
      )}
      ${addButton(msg('Add a group that can run full range'), () =>
        addTo(pen, fullRange, { group: 'fronts', unlocks: [] }),
      )}
    </section>
    <section class="part" aria-labelledby="sub">
      <h3 id="sub">${msg('Sub low-pass and low cut')}</h3>
      ${numbersField(pen, ['subLowPass', 'stepsHz'], { label: msg('Low-pass steps'), unit: 'Hz' })}
      ${flagField(pen, ['subLowPass', 'notBelowHighestBedCrossover'], {
        label: msg('Not below the highest crossover of the bed'),
      })}
      ${numbersField(pen, ['lowCut', 'stepsHz'], {
        label: msg('Low cut steps'),
        unit: 'Hz',
        hint: msg('Empty when the processor has none.'),
      })}
    </section>
    <section class="part" aria-labelledby="ranges">
      <h3 id="ranges">${msg('Distance and level')}</h3>
      <div class="fields">
        ${pickField(pen, ['distance', 'unit'], msg('Unit of distance'), [
          [msg('metres'), 'm'],
          [msg('feet'), 'ft'],
        ])}
        ${numberField(pen, ['distance', 'step'], { label: msg('Distance step'), unit })}
        ${numberField(pen, ['distance', 'low'], { label: msg('Shortest'), unit })}
        ${numberField(pen, ['distance', 'high'], { label: msg('Longest'), unit })}
      </div>
      <div class="fields">
        ${numberField(pen, ['level', 'stepDb'], { label: msg('Level step'), unit: 'dB' })}
        ${numberField(pen, ['level', 'lowDb'], { label: msg('Lowest'), unit: 'dB' })}
        ${numberField(pen, ['level', 'highDb'], { label: msg('Highest'), unit: 'dB' })}
      </div>
    </section>
    <section class="part" aria-labelledby="filters">
      <h3 id="filters">${msg('Filters the processor applies')}</h3>
      <div class="fields">
        ${pickField(pen, ['filters', 'highPass', 'family'], msg('High-pass of the speakers'), families)}
        ${numberField(pen, ['filters', 'highPass', 'order'], {
          label: msg('Its order'),
          hint: msg('2 is 12 dB per octave.'),
        })}
        ${pickField(pen, ['filters', 'subLowPass', 'family'], msg('Low-pass of the subs'), families)}
        ${numberField(pen, ['filters', 'subLowPass', 'order'], {
          label: msg('Its order'),
          hint: msg('4 is 24 dB per octave.'),
        })}
      </div>
    </section>`;
}

function limitRow(pen: DraftPen, index: number) {
  return html`<div class="row three">
    ${groupsField(pen, [...limits, index, 'groups'], { label: msg(str`Limit ${index + 1}: groups`) })}
    ${numberField(pen, [...limits, index, 'lowHz'], { label: msg('From'), unit: 'Hz' })}
    ${numberField(pen, [...limits, index, 'highHz'], { label: msg('To'), unit: 'Hz' })}
    ${removeButton(msg(str`limit ${index + 1}`), () => removeFrom(pen, limits, index))}
  </div>`;
}
