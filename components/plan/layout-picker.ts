import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../controls/choice';
import { fieldStyles } from '../controls/field-styles';
import { sharedStyles } from '../theme/shared-styles';

const usual = ['2.1', '3.1', '5.1', '5.1.2', '5.2.4', '7.1.4', '7.2.4', '9.2.4', '9.4.6'];

/** Says which speakers are there: one of the usual layouts or any other by its name. */
@customElement('ll-layout-picker')
export class LayoutPicker extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-4) var(--space-5);
      }

      ll-choice {
        flex: 1 1 36rem;
        min-width: 0;
      }

      form {
        flex: 1 1 22rem;
        align-content: start;
      }

      .entry {
        flex-wrap: wrap;
        width: 100%;
      }

      .entry input {
        flex: 1 1 8rem;
        min-width: 0;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  /** What was typed and refused; null while the field shows the layout in hand. */
  @state() private refused: string | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    const wrong = state.trouble?.trouble === 'bad-layout' ? state.trouble.sentence : null;
    const { name, title } = state.layout;
    return html`<ll-choice
        label=${msg('The usual ones')}
        .options=${usual.map((value) => ({ value, label: value }))}
        .value=${name}
        ?disabled=${busy}
        @ll-pick=${(event: CustomEvent<string>) => this.use(event.detail)}
      ></ll-choice>
      <form class="field" novalidate @submit=${this.submit}>
        <label for="name">${msg('Another, by its name or its speakers')}</label>
        <span class="entry">
          <input
            id="name"
            autocomplete="off"
            spellcheck="false"
            maxlength="120"
            .value=${wrong ? (this.refused ?? name) : name}
            ?disabled=${busy}
            aria-invalid=${wrong ? 'true' : 'false'}
            aria-describedby="said"
          />
          <button class="ghost" ?disabled=${busy}>${msg('Use this layout')}</button>
        </span>
        <p id="said" class=${wrong ? 'wrong' : 'soft small'} role=${wrong ? 'alert' : nothing}>
          ${
            wrong
              ? msg(str`${wrong} The layout is still ${title}.`)
              : busy
                ? msg('The layout stays as it is while a take runs.')
                : msg(
                    'Declare what stands in the room and no speaker more: what is sent to a speaker that is not there, nobody plays.',
                  )
          }
        </p>
      </form>`;
  }

  private use(name: string): void {
    this.refused = name;
    this.bench?.setLayout(name);
    this.requestUpdate();
  }

  private readonly submit = (event: Event): void => {
    event.preventDefault();
    const input = this.renderRoot.querySelector<HTMLInputElement>('#name');
    if (input) this.use(input.value);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-layout-picker': LayoutPicker;
  }
}
