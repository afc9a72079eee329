import { hzText, millisecondsText, numberText } from '../../../src/locale/number-text';
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
import { confidenceText, delayText, whyNotProposed } from './subs-words';

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

      th small {
        display: block;
        font-weight: 400;
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

  private others(alignment: SubAlignmentProposal, view: ProposeView) {
    const { alternatives, asProposedLossDb } = alignment;
    if (alternatives.length === 0) return nothing;
    const proposed: OtherDelay = {
      laterSeconds: 0,
      turned: false,
      lossDb: asProposedLossDb,
      fits: true,
      farther: false,
    };
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
        ${[proposed, ...alternatives].map((one) => {
          const why = whyNotProposed(one, alignment);
          return html`<tr>
            <th scope="row">
              ${one === proposed ? msg('as proposed') : delayText(one)}
              ${why === null ? nothing : html`<small>${why}</small>`}
            </th>
            <td class="num">${numberText(one.lossDb, 1)}</td>
            <td>${this.action(one, view)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  private action(one: OtherDelay, view: ProposeView) {
    const range = subDelayRange(view);
    if (!range || !one.fits) return nothing;
    const { subsLaterSeconds, subsTurned } = view.choices;
    const stepsAway = Math.round((subsLaterSeconds - one.laterSeconds) / range.stepSeconds);
    return stepsAway === 0 && subsTurned === one.turned
      ? html`<span class="soft">${msg('in force')}</span>`
      : html`<button class="plain" @click=${() => this.use(one, view)}>${msg('Use it')}</button>`;
  }

  private use({ laterSeconds, turned }: OtherDelay, view: ProposeView): void {
    const isTurn = turned !== view.choices.subsTurned;
    changeChoices(this.bench, isTurn ? msg('Turn the subs over') : msg('Move the subs in time'), {
      ...view.choices,
      subsLaterSeconds: laterSeconds,
      subsTurned: turned,
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sub-alignment': SubAlignment;
  }
}
