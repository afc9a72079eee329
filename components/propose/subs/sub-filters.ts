import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ProposalChoices } from '../../../src/proposal/choices';
import type { Reason } from '../../../src/proposal/reason';
import type { Bench } from '../../../src/session/bench';
import { hzText } from '../../../src/locale/number-text';
import '../../controls/number-field';
import { RevealController } from '../../controls/reveal-controller';
import { selectStyles } from '../../controls/select-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { changeChoices } from '../choices/change-choices';
import { lowPassSteps } from '../crossovers/workbench-handles';
import { proposeSheetAddress } from '../propose-sheets';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';

type Option = readonly [words: string, value: number | 'off' | null];

const lowPassRule = () =>
  msg(
    'The low-pass of all that the subs play lies at or above the highest crossover of the bed and the 120 Hz of LFE, where the processor has such a step. Below a crossover it opens a gap; the bass ledger shows it.',
  );
const lowCutRule = () =>
  msg(
    'A low cut protects a vented box below its tuning. The highest step is taken that costs next to nothing at the −3 dB point; a closed box needs none, nor one that stays under 10 % distortion as low as it was read.',
  );

/** The subs' own settings: their level against the mains, low-pass and low cut. */
@customElement('ll-sub-filters')
export class SubFilters extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        min-width: 0;
      }

      .one {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;

  constructor() {
    super();
    new RevealController(this, proposeSheetAddress('subs'));
  }

  override render() {
    const subs = this.view?.proposal.subs;
    const { view } = this;
    if (!view || !subs) return nothing;
    const { choices, workbench, settings } = view;
    const { lowPass, lowCut } = subs;
    const lowPasses = lowPassSteps(view, settings);
    const lowCuts = workbench.abilities.lowCutHz;
    return html`<ll-number
        label=${msg('Bass preference')}
        unit="dB"
        .value=${choices.bassPreferenceDb}
        .min=${-20}
        .max=${20}
        .decimals=${1}
        hint=${msg('How much louder the subs shall be than level with the mains.')}
        @ll-number=${(event: CustomEvent<number>) =>
          this.choose(msg('Choose bass preference'), { bassPreferenceDb: event.detail })}
      ></ll-number>
      <div class="one">
        ${
          lowPasses.length === 0
            ? html`<h3>${msg('Sub low-pass')}</h3>`
            : this.select(
                msg('Sub low-pass'),
                [
                  [
                    msg(str`as proposed, ${lowPass.hz === null ? msg('off') : hzText(lowPass.hz)}`),
                    null,
                  ],
                  ...lowPasses.map((hz): Option => [hzText(hz), hz]),
                ],
                choices.subLowPassHz,
                (value) =>
                  this.choose(msg('Choose sub low-pass'), {
                    subLowPassHz: value === 'off' ? null : value,
                  }),
              )
        }
        ${this.why(lowPass.reasons, lowPassRule())}
      </div>
      <div class="one">
        ${
          lowCuts.length === 0
            ? html`<h3>${msg('Low cut')}</h3>`
            : this.select(
                msg('Low cut'),
                [
                  [
                    msg(str`as proposed, ${lowCut.hz === null ? msg('off') : hzText(lowCut.hz)}`),
                    null,
                  ],
                  [msg('off'), 'off'],
                  ...lowCuts.map((hz): Option => [hzText(hz), hz]),
                ],
                choices.lowCutHz,
                (value) => this.choose(msg('Choose low cut'), { lowCutHz: value }),
              )
        }
        ${this.why(lowCut.reasons, lowCutRule())}
      </div>
      <div class="one">
        <h3 data-place="at the sub itself">${msg('Phase and polarity at the sub itself')}</h3>
        <ll-reasons .reasons=${subs.phase} .readings=${view.readings}></ll-reasons>
      </div>`;
  }

  private select(
    label: string,
    options: readonly Option[],
    now: Option[1],
    choose: (value: Option[1]) => void,
  ) {
    return html`<label class="select"
      ><span>${label}</span>
      <select
        @change=${(event: Event) => {
          const option = options[(event.currentTarget as HTMLSelectElement).selectedIndex];
          if (option) choose(option[1]);
        }}
      >
        ${options.map(
          ([words, value]) => html`<option .selected=${value === now}>${words}</option>`,
        )}
      </select>
    </label>`;
  }

  private why(reasons: readonly Reason[], rule: string) {
    return html`<ll-reasons
      .reasons=${reasons}
      .readings=${this.view?.readings ?? null}
      .rule=${rule}
    ></ll-reasons>`;
  }

  private choose(name: string, change: Partial<ProposalChoices>): void {
    if (this.view) changeChoices(this.bench, name, { ...this.view.choices, ...change });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sub-filters': SubFilters;
  }
}
