import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { GroupId } from '../../../src/system/channel';
import { listInWords } from '../../../src/system/list-in-words';
import {
  modelsOf,
  sheetRangeHz,
  withSheetF3,
  type SpeakerModel,
} from '../../../src/system/speaker-models';
import { BenchController } from '../../bench-controller';
import { selectStyles } from '../../controls/select-styles';
import { LaterElement } from '../../later-element';
import '../../patch/in-force/typed-number';
import { groupName } from '../../propose/group-words';
import { sharedStyles } from '../../theme/shared-styles';
import { changeModels } from './change-models';
import { groupsOf, modelOptions } from './model-options';

/** Which speakers are of one model, and where their sheets have them 3 dB down. */
@customElement('ll-speaker-models')
export class SpeakerModelsField extends LaterElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .picks {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 10rem), 1fr));
        gap: var(--space-3);
        align-items: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { layout, document } = state;
    const busy = state.activity.kind !== 'idle';
    return html`<div class="picks">
        ${groupsOf(layout).map((group) => this.pick(state, group, busy))}
      </div>
      <div class="picks">
        ${modelsOf(layout, document.models).map((model) => this.sheet(model, busy))}
      </div>
      <p class="soft small">
        ${msg('Speakers of one model are read as one, which narrows the interval. A sheet’s value is taken as right to 15 %, nine times in ten; leave it empty when you do not trust it.')}
      </p>`;
  }

  private pick({ layout, document }: BenchState, group: GroupId, busy: boolean) {
    const options = modelOptions(group, layout, document.models);
    if (options.length < 2) return nothing;
    return html`<label class="select">
      <span>${groupName(group, layout)}</span>
      <select
        ?disabled=${busy}
        data-group=${group}
        @change=${(event: Event) => {
          const option = options[(event.currentTarget as HTMLSelectElement).selectedIndex];
          if (option) changeModels(this.bench, msg('Say which speakers are alike'), option.choose);
        }}
      >
        ${options.map(({ words, chosen }) => html`<option .selected=${chosen}>${words}</option>`)}
      </select>
    </label>`;
  }

  private sheet({ channels, sheetF3Hz }: SpeakerModel, busy: boolean) {
    const labels = channels.map(({ label }) => label);
    const name = msg(str`Sheet’s −3 dB of ${listInWords(labels)}`);
    return html`<div class="select">
      <span aria-hidden="true">${name}</span>
      <ll-typed-number
        label=${name}
        unit="Hz"
        .min=${sheetRangeHz[0]}
        .max=${sheetRangeHz[1]}
        .value=${sheetF3Hz}
        ?disabled=${busy}
        @ll-maybe=${({ detail }: CustomEvent<number | null>) =>
          changeModels(this.bench, msg('Type the sheet’s −3 dB'), (models) =>
            withSheetF3(models, labels, detail),
          )}
      ></ll-typed-number>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-speaker-models': SpeakerModelsField;
  }
}
