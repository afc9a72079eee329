import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { nothingChosen } from '../../../src/proposal/choices';
import type { Bench } from '../../../src/session/bench';
import '../../charts/copy-button';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/check-field';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { changeChoices, isNothingChosen } from '../choices/change-choices';
import { Kept } from '../../kept';
import type { ProposeView } from '../propose-view';
import { compareCopy, compareRows, type CompareRow } from './compare-rows';

/** The proposed settings and the tuner's own, side by side, with what each loses. */
@customElement('ll-compare-sheet')
export class CompareSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .buttons {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        align-items: center;
        justify-content: space-between;
      }

      .ghost {
        justify-self: start;
      }

      tr.part th {
        padding-block-start: var(--space-4);
        color: var(--soft);
        font-size: var(--text-small);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  @state() private onlyDifferent = false;
  private readonly kept = new Kept<CompareRow[]>();

  override render() {
    const { view, bench } = this;
    if (!view) return nothing;
    const rows = this.rows(view);
    const shown = this.onlyDifferent ? rows.filter(({ differs }) => differs) : rows;
    const settings = shown.filter(({ outcome }) => !outcome);
    const outcomes = shown.filter(({ outcome }) => outcome);
    return html`<div class="sheets">
      <section class="sheet wide" aria-labelledby="compare">
        <h2 id="compare">${msg('Proposed and in force, side by side')}</h2>
        <p class="soft small">
          ${msg('For the proposed column the subs keep the alignment they have now: the table of steps under Crossovers aligns them anew for each step of the first group.')}
        </p>
        <ll-check
          label=${msg('Only what differs')}
          .checked=${this.onlyDifferent}
          @ll-check=${(event: CustomEvent<boolean>) => (this.onlyDifferent = event.detail)}
        ></ll-check>
        <table>
          <caption class="unseen">
            ${msg('Proposed settings and those in force')}
          </caption>
          <thead>
            <tr>
              <th scope="col">${msg('Setting')}</th>
              <th scope="col">${msg('Proposed')}</th>
              <th scope="col">${msg('In force')}</th>
            </tr>
          </thead>
          <tbody>
            ${settings.map(line)}
            ${
              outcomes.length > 0
                ? html`<tr class="part">
                      <th scope="rowgroup" colspan="3">${msg('What follows')}</th>
                    </tr>
                    ${outcomes.map(line)}`
                : nothing
            }
          </tbody>
        </table>
        <div class="buttons">
          ${
            isNothingChosen(view.choices)
              ? html`<p>${msg('You keep to everything that is proposed.')}</p>`
              : html`<button
                  class="ghost"
                  @click=${() =>
                    changeChoices(bench, msg('Keep everything proposed'), {
                      ...nothingChosen,
                      equaliserBands: view.choices.equaliserBands,
                    })}
                >
                  ${msg('Keep everything as proposed')}
                </button>`
          }
          <ll-copy-button label=${msg('Copy both')} .text=${compareCopy(rows)}></ll-copy-button>
        </div>
      </section>
    </div>`;
  }

  private rows(view: ProposeView): CompareRow[] {
    const { settings, proposed, workbench } = view;
    return this.kept.of([workbench, JSON.stringify([settings, proposed])], () => compareRows(view));
  }
}

function line({ name, proposed, own, differs }: CompareRow) {
  return html`<tr class=${differs ? 'pick' : ''}>
    <th scope="row">${name}</th>
    <td class="num">${proposed}</td>
    <td class="num">
      ${own}${differs ? html`<span class="unseen">${msg(', differs')}</span>` : nothing}
    </td>
  </tr>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-compare-sheet': CompareSheet;
  }
}
