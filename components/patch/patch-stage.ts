import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { SheetController } from '../controls/sheet-controller';
import '../controls/sheet-nav';
import { runningElsewhere } from '../probe/running-elsewhere';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';
import './ear/ear-sheet';
import './in-force/in-force-sheet';
import {
  firstPatchSheet,
  patchSheetAddress,
  patchSheetFromHash,
  patchSheetNames,
  patchSheetOrder,
  type PatchSheetId,
} from './patch-sheets';
import { patchTitle } from './patch-title';
import './sheet/sheet-sheet';
import './walk/walk-sheet';
import './wiring/wiring-sheet';

const links = () =>
  patchSheetOrder.map((id) => ({
    id,
    name: patchSheetNames[id],
    address: patchSheetAddress(id),
  }));

/** Stage 2: the processor, its wiring, and the proof of it. A sheet for each, named in the address. */
@customElement('ll-patch')
export class PatchStage extends LitElement {
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
  private readonly place = new SheetController(this, 'patch', patchSheetFromHash);
  /** Where this visit began; it stays there until another sheet is asked for. */
  private first: PatchSheetId | null = null;

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    this.first ??= firstPatchSheet(state);
    const here = this.place.sheet ?? this.first;
    const { title, lede } = patchTitle(state, here);
    return html`<ll-sheet-nav
        label=${msg('Sheets of Patch')}
        .sheets=${links()}
        .here=${here}
      ></ll-sheet-nav>
      <div class="lede">
        <h1>${title}</h1>
        <p>${lede}</p>
      </div>
      ${here === 'ear' || here === 'walk' ? nothing : runningElsewhere(state, null)}
      ${this.sheet(here)} ${onward(here)}`;
  }

  private sheet(here: PatchSheetId) {
    const { bench, selected } = this;
    switch (here) {
      case 'sheet':
        return html`<ll-sheet-sheet .bench=${bench}></ll-sheet-sheet>`;
      case 'wiring':
        return html`<ll-wiring-sheet .bench=${bench} .selected=${selected}></ll-wiring-sheet>`;
      case 'ear':
        return html`<ll-ear-sheet .bench=${bench} .selected=${selected}></ll-ear-sheet>`;
      case 'walk':
        return html`<ll-walk-sheet .bench=${bench}></ll-walk-sheet>`;
      case 'in-force':
        return html`<ll-in-force-sheet .bench=${bench} .selected=${selected}></ll-in-force-sheet>`;
    }
  }
}

/** The way to the sheet that comes next; from the last one, the shell points further. */
function onward(here: PatchSheetId) {
  const next = patchSheetOrder[patchSheetOrder.indexOf(here) + 1];
  if (next === undefined) return nothing;
  return html`<a class="ghost onward" href=${patchSheetAddress(next)}
    >${msg(str`Next: ${patchSheetNames[next]}`)}</a
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-patch': PatchStage;
  }
}
