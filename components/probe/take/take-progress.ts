import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { numberText, thinSpace } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/progress-bar';
import { sharedStyles } from '../../theme/shared-styles';

/** How far the running take or its reading has come, and the way to stop it. */
@customElement('ll-take-progress')
export class TakeProgress extends LaterElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-4);
        align-items: center;
        justify-content: space-between;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const activity = this.follow.state?.activity;
    if (activity?.kind !== 'playing' && activity?.kind !== 'reading') return nothing;
    const playing = activity.kind === 'playing';
    const { progress } = playing ? activity.play : activity;
    const part = playing && activity.part.of > 1 ? activity.part : null;
    return html`<ll-progress
        label=${playing ? msg('Take played') : msg('Take read')}
        .value=${progress}
      ></ll-progress>
      <div>
        <span>
          ${msg(html`<span class="num">${numberText(progress * 100)}${thinSpace}%</span> of ${part ? html`${msg(str`take ${part.number} of ${part.of}`)}` : msg('the take')} ${playing ? msg('played') : msg('read')}`)}
        </span>
        <button class="ghost" @click=${() => this.bench?.stop()}>
          ${playing ? msg('Stop this take') : msg('Stop reading')}
        </button>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-progress': TakeProgress;
  }
}
