import { msg, str } from '@lit/localize';
import type { BenchState } from '../../src/session/bench';
import { html, nothing } from 'lit';
import { sheetAddress, sheetNames, sheetOfActivity, type SheetId } from './probe-sheets';
import { soundInWords } from '../strip/strip-words';

/** A line that says what runs on another sheet, with the way there; null: of another stage. */
export function runningElsewhere(state: BenchState, here: SheetId | null) {
  if (state.activity.kind === 'walking') {
    return html`<p class="elsewhere">
      ${soundInWords(state)}. <a href="#patch/walk">${msg('Go to Walk check')}</a>
    </p>`;
  }
  const sheet = sheetOfActivity(state);
  if (sheet === null || sheet === here) return nothing;
  return html`<p class="elsewhere">
    ${soundInWords(state)}.
    <a href=${sheetAddress(sheet)}>${msg(str`Go to ${sheetNames[sheet]}`)}</a>
  </p>`;
}
