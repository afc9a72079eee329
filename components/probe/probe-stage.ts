import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { LateController, type LateView } from '../late/late-controller';
import '../late/late-failure';
import { SheetController } from '../controls/sheet-controller';
import '../controls/sheet-nav';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './connect/connect-sheet';
import { lateInspect } from './inspect/late-inspect';
import './level/level-sheet';
import './microphone/microphone-sheet';
import './noise/noise-sheet';
import {
  firstSheet,
  sheetAddress,
  sheetFromHash,
  sheetNames,
  sheetOfActivity,
  sheetOrder,
  type SheetId,
} from './probe-sheets';
import { runningElsewhere } from './running-elsewhere';
import { sheetTitle } from './sheet-title';
import './take/take-sheet';
import './take/waiting-card';

const links = () =>
  sheetOrder.map((id) => ({ id, name: sheetNames[id], address: sheetAddress(id) }));

/** Stage 3: connect, set the level, play and capture. A sheet for each, named in the address. */
@customElement('ll-probe')
export class ProbeStage extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .onward {
        justify-self: start;
      }

      .elsewhere {
        font-weight: 700;
        color: var(--signal);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private readonly place = new SheetController(this, 'probe', sheetFromHash);
  private readonly late = new LateController<SheetId>(this, { inspect: lateInspect });

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const view = this.late.show(this.place.sheet ?? firstSheet(state));
    const { here } = view;
    const { title, lede } = sheetTitle(state, here);
    return html`<ll-sheet-nav
        label=${msg('Sheets of Probe')}
        .sheets=${links()}
        .here=${here}
        .running=${sheetOfActivity(state)}
      ></ll-sheet-nav>
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      ${
        state.activity.kind === 'waiting'
          ? html`<ll-waiting-card .bench=${this.bench}></ll-waiting-card>`
          : runningElsewhere(state, here)
      }
      ${view.there ? this.sheet(here) : this.renderMissing(view)} ${onward(here)}`;
  }

  /** In the place of a sheet that is on its way, or did not come. */
  private renderMissing({ trouble }: LateView<SheetId>) {
    if (trouble === null) return nothing;
    return html`<ll-late-failure
      .trouble=${trouble}
      @ll-again=${() => this.late.again()}
    ></ll-late-failure>`;
  }

  private sheet(here: SheetId) {
    const { bench, selected } = this;
    switch (here) {
      case 'connect':
        return html`<ll-connect-sheet .bench=${bench}></ll-connect-sheet>`;
      case 'microphone':
        return html`<ll-microphone-sheet .bench=${bench}></ll-microphone-sheet>`;
      case 'level':
        return html`<ll-level-sheet .bench=${bench}></ll-level-sheet>`;
      case 'take':
        return html`<ll-take-sheet .bench=${bench} .selected=${selected}></ll-take-sheet>`;
      case 'noise':
        return html`<ll-noise-sheet .bench=${bench} .selected=${selected}></ll-noise-sheet>`;
      case 'inspect':
        return html`<ll-inspect-sheet .bench=${bench} .selected=${selected}></ll-inspect-sheet>`;
    }
  }
}

/** The way to the sheet that comes next; from the take on, the shell points further. */
function onward(here: SheetId) {
  const next = sheetOrder[sheetOrder.indexOf(here) + 1];
  if (next === undefined || here === 'take') return nothing;
  return html`<a class="ghost onward" href=${sheetAddress(next)}
    >${msg(str`Next: ${sheetNames[next]}`)}</a
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-probe': ProbeStage;
  }
}
