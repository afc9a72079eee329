import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { stepsFor } from '../../../src/proposal/abilities';
import type { GroupProposal } from '../../../src/proposal/proposal';
import type { GroupId } from '../../../src/system/channel';
import { proposedHz } from '../../../src/workbench/try-settings';
import { hzText } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import { LaterElement } from '../../later-element';
import { sharedStyles } from '../../theme/shared-styles';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';
import './crossover-steps';
import { stepsRule } from './step-words';

/** A crossover that is wanted for the group in view; null for full range. */
export interface WantedCrossover {
  readonly group: GroupId;
  readonly hz: number | null;
}

/** Why this crossover: its reasons, the other steps, the price of one's own. Fires `ll-crossover`. */
@customElement('ll-why-crossover')
export class WhyCrossover extends LaterElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        min-width: 0;
      }

      [role='status']:empty {
        position: absolute;
      }

      .price {
        display: grid;
        gap: var(--space-2);
        justify-items: start;
        padding: var(--space-3);
        border-left: 4px solid var(--signal);
        background: var(--wash);
      }

      details > ll-reasons {
        margin-block-start: var(--space-1);
      }
    `,
  ];

  @property({ attribute: false }) view: ProposeView | null = null;
  /** In force, or where a handle is held; null for full range. */
  @property({ attribute: false }) crossoverHz: number | null = null;

  private want(hz: number | null): void {
    const group = this.view?.group.group;
    if (!group) return;
    const detail: WantedCrossover = { group, hz };
    this.dispatchEvent(new CustomEvent('ll-crossover', { detail, bubbles: true, composed: true }));
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { group, readings, workbench } = view;
    const { reasons, warnings, fullRange } = group;
    return html`<h2>${whyTitle(group)}</h2>
      <ll-reasons .reasons=${reasons} .readings=${readings} .rule=${stepsRule()}></ll-reasons>
      ${warnings.map((warning) => html`<p class="signal">${warning}</p>`)}
      <ll-crossover-steps
        .proposal=${group}
        .stepsHz=${stepsFor(workbench.abilities, group.group)}
        .crossoverHz=${this.crossoverHz}
        @ll-step=${(event: CustomEvent<number | null>) => this.want(event.detail)}
      ></ll-crossover-steps>
      <div role="status">${this.price(view)}</div>
      <details>
        <summary>${msg('Full range or not')}</summary>
        <ll-reasons .reasons=${fullRange.reasons} .readings=${readings}></ll-reasons>
      </details>`;
  }

  private price({ group, readings }: ProposeView) {
    const hz = this.crossoverHz;
    const proposed = proposedHz(group);
    if (hz === proposed) return nothing;
    const { own } = group;
    const price = own?.crossoverHz === hz ? own.price : null;
    return html`<div class="price">
      <p><b>${msg(str`You set ${hz === null ? msg('full range') : hzText(hz)}.`)}</b></p>
      ${
        price === null
          ? html`<p>${msg('What it costs is worked out.')}</p>`
          : price.length === 0
            ? html`<p>${msg('It breaks nothing, and costs nothing that can be told.')}</p>`
            : html`<ll-reasons .reasons=${price} .readings=${readings}></ll-reasons>`
      }
      <button class="ghost" @click=${() => this.want(proposed)}>
        ${msg(str`Back to ${proposed === null ? msg('full range') : hzText(proposed)}`)}
      </button>
    </div>`;
  }
}

function whyTitle(group: GroupProposal): string {
  const hz = proposedHz(group);
  if (hz === null) return msg('Why full range');
  if (group.crossoverHz === null)
    return msg(str`Why no step, and ${hzText(hz)} for want of a better`);
  return group.decidedBy === null
    ? msg(str`Why ${hzText(hz)}, for now`)
    : msg(str`Why ${hzText(hz)}, and not another step`);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-why-crossover': WhyCrossover;
  }
  interface HTMLElementEventMap {
    'll-crossover': CustomEvent<WantedCrossover>;
  }
}
