import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { SheetController } from '../controls/sheet-controller';
import '../controls/sheet-nav';
import { askToGo } from '../events';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './bass/bass-sheet';
import './compare/compare-sheet';
import './crossovers/crossovers-sheet';
import './equaliser/equaliser-sheet';
import './list/list-sheet';
import { missingList } from './missing-list';
import {
  proposeSheetAddress,
  proposeSheetFromHash,
  proposeSheetNames,
  proposeSheetOrder,
  type ProposeSheetId,
} from './propose-sheets';
import { missingTitle, proposeTitle } from './propose-title';
import { proposeView, type ProposeView } from './propose-view';
import './subs/subs-sheet';

const links = () =>
  proposeSheetOrder.map((id) => ({
    id,
    name: proposeSheetNames[id],
    address: proposeSheetAddress(id),
  }));

/** Stage 4: numbers to type, each with its reason. A sheet for each part, named in the address. */
@customElement('ll-propose')
export class ProposeStage extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    stageStyles,
    css`
      .none {
        display: grid;
        gap: var(--space-4);
        justify-items: start;
      }

      .onward {
        justify-self: start;
      }

      .missing summary {
        min-height: var(--target);
        align-content: center;
        color: var(--signal);
        font-weight: 700;
        cursor: pointer;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private readonly place = new SheetController(this, 'propose', proposeSheetFromHash);

  override render() {
    const { state } = this.follow;
    const { bench } = this;
    if (!state || !bench) return nothing;
    const view = proposeView(bench, state, this.selected);
    if (!view) return this.missing(state);
    const here = this.place.sheet ?? 'crossovers';
    const { title, lede } = proposeTitle(view, state, here);
    return html`<ll-sheet-nav
        label=${msg('Sheets of Propose')}
        .sheets=${links()}
        .here=${here}
      ></ll-sheet-nav>
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      ${missingList(view.proposal.missing)} ${this.sheet(here, view)} ${onward(here)}`;
  }

  private sheet(here: ProposeSheetId, view: ProposeView) {
    const { bench, selected } = this;
    switch (here) {
      case 'crossovers':
        return html`<ll-crossovers-sheet .bench=${bench} .view=${view}></ll-crossovers-sheet>`;
      case 'subs':
        return html`<ll-subs-sheet
          .bench=${bench}
          .view=${view}
          .selected=${selected}
        ></ll-subs-sheet>`;
      case 'bass':
        return html`<ll-bass-sheet .bench=${bench} .view=${view}></ll-bass-sheet>`;
      case 'compare':
        return html`<ll-compare-sheet .bench=${bench} .view=${view}></ll-compare-sheet>`;
      case 'equaliser':
        return html`<ll-equaliser-sheet .bench=${bench} .view=${view}></ll-equaliser-sheet>`;
      case 'list':
        return html`<ll-list-sheet
          .bench=${bench}
          .view=${view}
          .selected=${selected}
        ></ll-list-sheet>`;
    }
  }

  private missing(state: BenchState) {
    const { title, lede } = missingTitle(state);
    return html`<div class="none">
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      <button class="go" @click=${() => askToGo(this, 'probe')}>${msg('Go to Probe')}</button>
    </div>`;
  }
}

/** The way to the sheet that comes next; from the list on, the shell points further. */
function onward(here: ProposeSheetId) {
  const next = proposeSheetOrder[proposeSheetOrder.indexOf(here) + 1];
  if (next === undefined || here === 'list') return nothing;
  return html`<a class="ghost onward" href=${proposeSheetAddress(next)}
    >${msg(str`Next: ${proposeSheetNames[next]}`)}</a
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-propose': ProposeStage;
  }
}
