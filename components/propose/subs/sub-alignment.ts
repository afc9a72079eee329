import { dbText, hzText, millisecondsText, numberText } from '../../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { OtherDelay, SubAlignmentProposal } from '../../../src/proposal/subs-proposal';
import type { Bench } from '../../../src/session/bench';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { changeChoices } from '../choices/change-choices';
import { sumText } from '../crossovers/sum-words';
import { groupName } from '../group-words';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';
import { subDelayRange } from './sub-delay';
import { confidenceText, delayText } from './subs-words';

const rule = () =>
  msg(
    str`Delays in steps of ${millisecondsText(0.00025)} and both polarities are tried at all seats by the energy that is lost about the crossover, weighted as pink noise. Of the least losses near where the direct sounds of subs and mains line up the least is taken, its distance from there counted against it: a whole period away the sum is nearly as loud and the attack is late. It is never worse than what is set now. Several subs are first set against each other for the least difference between seats. Own method.`,
  );

/** How the subs were set against the mains, how sure it is, and what else would do. */
@customElement('ll-sub-alignment')
export class SubAlignment extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        min-width: 0;
      }

      td.left,
      th.left {
        text-align: left;
      }

      td {
        vertical-align: middle;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;

  override render() {
    const { view } = this;
    const subs = view?.proposal.subs;
    if (!view || !subs) return nothing;
    const { alignment } = subs;
    const { readings, layout } = view;
    return html`<ll-reasons
        .reasons=${subs.reasons}
        .readings=${readings}
        .rule=${rule()}
      ></ll-reasons>
      ${
        alignment
          ? html`<p>${confidenceText(alignment)}</p>
              ${alignment.doubt === null ? nothing : html`<p class="signal">${alignment.doubt}</p>`}
              ${this.others(alignment, view)}
              <table>
                <caption class="unseen">
                  ${msg('What each group and the subs lose')}
                </caption>
                <thead>
                  <tr>
                    <th scope="col">${msg('With the subs')}</th>
                    <th scope="col">${msg('Crossover')}</th>
                    <th scope="col">${msg('Lost, dB')}</th>
                    <th scope="col">${msg('Dip, dB')}</th>
                  </tr>
                </thead>
                <tbody>
                  ${[alignment, ...alignment.groups].map(
                    ({ group, sum }) =>
                      html`<tr title=${sumText(sum)}>
                        <th scope="row">${groupName(group, layout)}</th>
                        <td class="num">${hzText(view.settings.crossoverHz[group])}</td>
                        <td class="num">${numberText(sum.lossDb, 1)}</td>
                        <td class="num">${numberText(sum.dipDb, 1)}</td>
                      </tr>`,
                  )}
                </tbody>
              </table>`
          : nothing
      }`;
  }

  private others({ alternatives, sum }: SubAlignmentProposal, view: ProposeView) {
    if (alternatives.length === 0) return nothing;
    return html`<table>
      <caption class="unseen">
        ${msg('Other delays that do nearly as well')}
      </caption>
      <thead>
        <tr>
          <th scope="col">${msg('Would do as well')}</th>
          <th scope="col">${msg('Lost, dB')}</th>
          <th scope="col"><span class="unseen">${msg('Try it')}</span></th>
        </tr>
      </thead>
      <tbody>
        ${alternatives.map(
          (one) =>
            html`<tr>
              <th scope="row">${delayText(one)}</th>
              <td class="num" title=${msg(str`as typed ${dbText(sum.lossDb)}`)}>
                ${numberText(one.lossDb, 1)}
              </td>
              <td>
                ${
                  one.turned
                    ? nothing
                    : html`<button class="plain" @click=${() => this.use(one, view)}>
                        ${msg('Use it')}
                      </button>`
                }
              </td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private use({ laterSeconds }: OtherDelay, view: ProposeView): void {
    const range = subDelayRange(view);
    if (!range) return;
    const wished = view.made.subsLaterSeconds + laterSeconds;
    const steps = Math.round(wished / range.stepSeconds);
    changeChoices(this.bench, msg('Move the subs in time'), {
      ...view.choices,
      subsLaterSeconds: steps * range.stepSeconds,
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sub-alignment': SubAlignment;
  }
}
