import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ClockFault, Readings } from '../../../src/reading/reading';
import {
  intervalDigits,
  intervalText,
  isNumber,
  metresText,
  numberText,
  thinSpace,
} from '../../charts/number-text';
import { sharedStyles } from '../../theme/shared-styles';
import { sayList } from '../../../src/proposal/phrases';

/** What a take says of itself: its clock, its losses, its noise. */
@customElement('ll-take-facts')
export class TakeFacts extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .facts {
        grid-template-columns: max-content minmax(min-content, 1fr);
      }

      .interval {
        font-size: 0.85em;
        display: inline-block;
        white-space: nowrap;
      }
    `,
  ];

  @property({ attribute: false }) readings: Readings | null = null;
  /** Name of the microphone's position; nothing is said of it when empty. */
  @property() position = '';
  /** Takes the readings were joined from. */
  @property({ type: Number }) takes = 1;

  override render() {
    const { readings } = this;
    if (!readings) return nothing;
    const { clock, capture } = readings;
    const skewDigits = intervalDigits(clock.skewInterval, 1);
    return html`<dl class="facts">
      ${
        this.position
          ? html`<dt>Position</dt>
              <dd>${this.position}</dd>`
          : nothing
      }
      ${
        this.takes > 1
          ? html`<dt>Joined from</dt>
              <dd>${this.takes} takes</dd>`
          : nothing
      }
      <dt>Room</dt>
      <dd>${readings.simulated ? 'simulated' : 'real'}</dd>
      <dt>Speakers read</dt>
      <dd class="num">${readings.channels.length}</dd>
      <dt>Times refer to</dt>
      <dd class="num">${readings.reference} at ${metresText(readings.referenceDistanceMetres)}</dd>
      <dt>Temperature</dt>
      <dd class="num">${numberText(readings.temperatureCelsius, 1)}${thinSpace}°C</dd>
      <dt>Clock skew</dt>
      <dd class="num">
        ${withUnit(clock.skewPpm, skewDigits, 'ppm')}
        <span class="soft interval">${intervalText(clock.skewInterval, skewDigits)}</span>
      </dd>
      ${this.audio('Lost audio', 'lost')} ${this.audio('Repeated audio', 'repeated')}
      <dt>Clipped</dt>
      <dd class=${capture.clipped.length > 0 ? 'signal' : ''}>
        ${capture.clipped.length > 0 ? sayList(capture.clipped) : 'none'}
      </dd>
      <dt>Loudest sample</dt>
      <dd class="num">${withUnit(capture.peakDb, 1, 'dBFS')}</dd>
      <dt>Room noise</dt>
      <dd class="num">${withUnit(capture.noiseFloorDb, 1, 'dBFS')}</dd>
      ${
        readings.notes.length > 0
          ? html`<dt>To know</dt>
              <dd>${readings.notes.join(' ')}</dd>`
          : nothing
      }
    </dl>`;
  }

  private audio(name: string, kind: ClockFault['kind']) {
    const faults = this.readings?.clock.faults.filter((fault) => fault.kind === kind) ?? [];
    return html`<dt>${name}</dt>
      <dd class=${faults.length > 0 ? 'signal' : ''}>
        ${faults.length === 0 ? 'none' : faults.map(faultWords).join('; ')}
      </dd>`;
  }
}

function faultWords({ samples, channel }: ClockFault): string {
  return `${numberText(samples)} samples ${channel ? `in ${channel}` : 'between speakers'}`;
}

function withUnit(value: number, digits: number, unit: string): string {
  return isNumber(value) ? `${numberText(value, digits)}${thinSpace}${unit}` : 'cannot tell';
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-facts': TakeFacts;
  }
}
