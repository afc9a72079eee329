import { msg, str } from '@lit/localize';
import { html, nothing } from 'lit';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { numberText, thinSpace } from '../../../src/locale/number-text';
import { isSub } from '../../../src/system/channel-names';

/** What a sheet says, in a few rows. */
export function sheetFacts({
  outputs,
  crossover,
  distance,
  level,
  lowCut,
  subLowPass,
}: ProcessorSheet) {
  const subs = outputs.filter(({ roles }) => roles.some(({ channel }) => isSub(channel)));
  const range = (low: number, high: number, step: number, unit: string) =>
    msg(str`${short(low)} to ${short(high)}${thinSpace}${unit} in steps of ${short(step)}`);
  return html`<dl class="facts">
    <dt>${msg('Outputs')}</dt>
    <dd>${msg(str`${outputs.length}, ${subs.length} of them for subs`)}</dd>
    <dt>${msg('Crossover')}</dt>
    <dd>
      ${span(crossover.stepsHz)},
      ${crossover.setting === 'per group' ? msg('for each group') : msg('one for all')}
    </dd>
    <dt>${msg('Sub low-pass')}</dt>
    <dd>${span(subLowPass.stepsHz)}</dd>
    ${
      lowCut.stepsHz.length === 0
        ? nothing
        : html`<dt>${msg('Low cut')}</dt>
            <dd>${span(lowCut.stepsHz)}</dd>`
    }
    <dt>${msg('Distance')}</dt>
    <dd>${range(distance.low, distance.high, distance.step, distance.unit)}</dd>
    <dt>${msg('Level')}</dt>
    <dd>${range(level.lowDb, level.highDb, level.stepDb, 'dB')}</dd>
  </dl>`;
}

function span(steps: readonly number[]): string {
  return msg(
    str`${steps.length} steps, ${short(steps[0])} to ${short(steps.at(-1))}${thinSpace}Hz`,
  );
}

function short(value: number | undefined): string {
  return value === undefined ? '–' : numberText(value, 3).replace(/\.?0+$/, '');
}
