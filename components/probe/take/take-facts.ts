import { temperatureText } from '../../../src/locale/temperature-text';
import { msg, str } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import type { ClockFault, Readings } from '../../../src/reading/reading';
import { lengthText } from '../../../src/locale/length-text';
import {
  intervalDigits,
  intervalText,
  isNumber,
  numberText,
  thinSpace,
} from '../../../src/locale/number-text';
import { sharedStyles } from '../../theme/shared-styles';
import { sayList } from '../../../src/proposal/phrases';

/** What a take says of itself: its clock, its losses, its noise. */
@customElement('ll-take-facts')
export class TakeFacts extends LaterElement {
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
          ? html`<dt>${msg('Position')}</dt>
              <dd>${this.position}</dd>`
          : nothing
      }
      ${
        this.takes > 1
          ? html`<dt>${msg('Joined from')}</dt>
              <dd>${msg(str`${this.takes} takes`)}</dd>`
          : nothing
      }
      <dt>${msg('Room')}</dt>
      <dd>${readings.simulated ? msg('simulated') : msg('real')}</dd>
      <dt>${msg('Speakers read')}</dt>
      <dd class="num">${readings.channels.length}</dd>
      <dt>${msg('Times refer to')}</dt>
      <dd class="num">
        ${msg(str`${readings.reference} at ${lengthText(readings.referenceDistanceMetres)}`)}
      </dd>
      <dt>${msg('Temperature')}</dt>
      <dd class="num">${temperatureText(readings.temperatureCelsius)}</dd>
      <dt>${msg('Clock skew')}</dt>
      <dd class="num">
        ${withUnit(clock.skewPpm, skewDigits, 'ppm')}
        <span class="soft interval">${intervalText(clock.skewInterval, skewDigits)}</span>
      </dd>
      ${this.audio(msg('Lost audio'), 'lost')} ${this.audio(msg('Repeated audio'), 'repeated')}
      <dt>${msg('Clipped')}</dt>
      <dd class=${capture.clipped.length > 0 ? 'signal' : ''}>
        ${capture.clipped.length > 0 ? sayList(capture.clipped) : msg('none')}
      </dd>
      <dt>${msg('Loudest sample')}</dt>
      <dd class="num">${withUnit(capture.peakDb, 1, 'dBFS')}</dd>
      <dt>${msg('Room noise')}</dt>
      <dd class="num">${withUnit(capture.noiseFloorDb, 1, 'dBFS')}</dd>
      ${
        readings.notes.length > 0
          ? html`<dt>${msg('To know')}</dt>
              <dd>${readings.notes.join(' ')}</dd>`
          : nothing
      }
    </dl>`;
  }

  private audio(name: string, kind: ClockFault['kind']) {
    const faults = this.readings?.clock.faults.filter((fault) => fault.kind === kind) ?? [];
    return html`<dt>${name}</dt>
      <dd class=${faults.length > 0 ? 'signal' : ''}>
        ${faults.length === 0 ? msg('none') : faults.map(faultWords).join('; ')}
      </dd>`;
  }
}

function faultWords({ samples, channel }: ClockFault): string {
  return msg(
    str`${numberText(samples)} samples ${channel ? `in ${channel}` : msg('between speakers')}`,
  );
}

function withUnit(value: number, digits: number, unit: string): string {
  return isNumber(value) ? `${numberText(value, digits)}${thinSpace}${unit}` : msg('cannot tell');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-take-facts': TakeFacts;
  }
}
