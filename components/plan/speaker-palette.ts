import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import type { Layout } from '../../src/system/channel';
import {
  addGroup,
  declarableGroups,
  hasGroup,
  labelsOf,
  removeGroup,
  setSubs,
  type DeclarableGroup,
} from '../../src/system/edit-speakers';
import { leftOutContent } from '../../src/system/left-out-content';
import { listInWords } from '../../src/system/list-in-words';
import { isTrouble, type Trouble } from '../../src/trouble';
import { BenchController } from '../bench-controller';
import '../controls/check-field';
import { groupWord } from '../../src/system/group-word';
import type { CheckField } from '../controls/check-field';
import '../controls/choice';
import { sharedStyles } from '../theme/shared-styles';
import { isBusy } from './declared-plan';
import { asSentence } from './layout-words';
import { putBack } from './put-back';

/** Names that say more than within a sentence. */
const longer: Readonly<Partial<Record<DeclarableGroup, () => string>>> = {
  wides: () => msg('front wides'),
};

/** What can be declared beside the fronts, with what becomes of its content without it. */
@customElement('ll-speaker-palette')
export class SpeakerPalette extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .groups {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr));
        gap: var(--space-1) var(--space-5);
        align-items: start;
      }

      .subs {
        margin-top: var(--space-1);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private refusal: string | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { layout } = state;
    const busy = isBusy(state);
    const subs = layout.channels.filter(({ kind }) => kind === 'sub').length;
    const { listed, leftOut } = leftOutContent(layout, 'subs');
    return html`<div
        class="groups"
        role="group"
        aria-label=${msg('Beside front left and front right')}
      >
        ${declarableGroups.map((group) => this.renderGroup(layout, group, busy))}
        <div>
          <ll-choice
            label=${msg('Subs')}
            .options=${[0, 1, 2, 3, 4].map((count) => ({ value: `${count}`, label: `${count}` }))}
            .value=${`${subs}`}
            ?disabled=${busy}
            @ll-pick=${(event: CustomEvent<string>) =>
              this.use(setSubs(layout, Number(event.detail)))}
          ></ll-choice>
          <p class="soft small subs">${subs > 0 ? listed : leftOut}</p>
        </div>
      </div>
      ${this.refusal ? html`<p class="signal" role="alert">${this.refusal}</p>` : nothing}`;
  }

  private renderGroup(layout: Layout, group: DeclarableGroup, busy: boolean): TemplateResult {
    const there = hasGroup(layout, group);
    const { listed, leftOut } = leftOutContent(layout, group);
    return html`<ll-check
      data-group=${group}
      label=${`${asSentence(longer[group]?.() ?? groupWord(group))}: ${listInWords(labelsOf(group))}`}
      hint=${there ? listed : leftOut}
      ?checked=${there}
      ?disabled=${busy}
      @ll-check=${(event: CustomEvent<boolean>) => {
        const wanted = event.detail ? addGroup(layout, group) : removeGroup(layout, group);
        if (!this.use(wanted)) void putBack<CheckField>(event, (one) => (one.checked = there));
      }}
    ></ll-check>`;
  }

  /** Whether the layout was taken. */
  private use(layout: Layout | Trouble): boolean {
    this.refusal = isTrouble(layout) ? layout.sentence : null;
    if (isTrouble(layout)) return false;
    this.bench?.setLayout(layout.name);
    return this.bench?.state.layout.name === layout.name;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-speaker-palette': SpeakerPalette;
  }
}
