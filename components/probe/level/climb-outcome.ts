import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ClimbResult } from '../../../src/soundlevel/sound-level';
import { dbText, thinSpace } from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';

/** How the last climb ended, and whether the path is linear. */
@customElement('ll-climb-outcome')
export class ClimbOutcome extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-2);
      }

      .facts {
        max-width: 30rem;
      }
    `,
  ];

  @property({ attribute: false }) climbed: ClimbResult | null = null;

  override render() {
    const { climbed } = this;
    if (!climbed) return nothing;
    const good = climbed.end === 'margin' || climbed.end === 'target';
    return html`<p class=${good ? '' : 'signal'} role="status">${climbed.sentence}</p>
      <dl class="facts">
        <dt>${msg('Test level')}</dt>
        <dd class="num">${dbText(climbed.gainDb)}</dd>
        <dt>${msg('Over the noise')}</dt>
        <dd class="num">
          ${climbed.marginDb === null ? msg('cannot tell') : dbText(climbed.marginDb)}
        </dd>
        <dt>${msg(str`6${thinSpace}dB sent come back as`)}</dt>
        <dd class=${climbed.linearity?.passes === false ? 'signal' : ''}>
          ${linearityText(climbed.linearity)}
        </dd>
      </dl>`;
  }
}

function linearityText(linearity: ClimbResult['linearity']): string {
  if (!linearity) return msg('cannot tell');
  return `${dbText(linearity.stepDb, 2)}${linearity.passes ? msg(', in order') : msg(', not in order')}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-climb-outcome': ClimbOutcome;
  }
}
