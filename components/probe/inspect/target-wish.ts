import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Target } from '../../../dsp/response/target';
import { parseTarget } from '../../../src/inspect/parse-target';
import { isTrouble } from '../../../src/trouble';
import '../../controls/check-field';
import '../../controls/file-drop';
import '../../controls/number-field';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';

const usual: Target = {
  points: null,
  tiltDbPerOctave: -0.8,
  bassShelf: { hz: 100, db: 4 },
};

/** The target that curves are held against: tilt, bass, points of a file. Fires `ll-target`. */
@customElement('ll-target-wish')
export class TargetWish extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .fields {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 8rem), 1fr));
        gap: var(--space-3);
        align-items: start;
      }

      .refused {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) target: Target | null = null;
  @state() private refused: string | null = null;
  /** Name of the file whose points are in use. */
  @state() private file: string | null = null;

  override render() {
    const { target } = this;
    return html`<ll-check
        label=${msg('Hold them against a target')}
        hint=${msg('A line that falls towards the treble and rises in the bass, or points of your own.')}
        .checked=${target !== null}
        @ll-check=${(event: CustomEvent<boolean>) => this.tell(event.detail ? usual : null)}
      ></ll-check>
      ${target === null ? nothing : this.parts(target)}`;
  }

  private parts(target: Target) {
    const shelf = target.bassShelf ?? { hz: 100, db: 0 };
    return html`<div class="fields">
        <ll-number
          label=${msg('Tilt')}
          unit="dB/oct"
          min="-3"
          max="3"
          .value=${target.tiltDbPerOctave}
          @ll-number=${(event: CustomEvent<number>) =>
            this.tell({ ...target, tiltDbPerOctave: event.detail })}
        ></ll-number>
        <ll-number
          label=${msg('Bass')}
          unit="dB"
          min="-12"
          max="12"
          .value=${shelf.db}
          @ll-number=${(event: CustomEvent<number>) =>
            this.tell({ ...target, bassShelf: { ...shelf, db: event.detail } })}
        ></ll-number>
        <ll-number
          label=${msg('below')}
          unit="Hz"
          min="20"
          max="500"
          .value=${shelf.hz}
          @ll-number=${(event: CustomEvent<number>) =>
            this.tell({ ...target, bassShelf: { ...shelf, hz: event.detail } })}
        ></ll-number>
      </div>
      <ll-file-drop
        label=${msg('Points from a file')}
        hint=${msg('rows of frequency in Hz and dB')}
        name=${msg('Target')}
        accept=".txt,.csv,text/plain"
        @ll-file=${(event: CustomEvent<File>) => void this.bring(event.detail, target)}
      ></ll-file-drop>
      ${
        this.refused === null
          ? nothing
          : html`<p class="signal refused" role="alert">
              ${msg(str`${this.refused} Nothing was changed.`)}
            </p>`
      }
      ${
        target.points === null
          ? nothing
          : html`<p class="small refused">
              ${msg(str`Points of ${this.file ?? msg('a file')}.`)}
              <button class="ghost" @click=${() => this.tell({ ...target, points: null })}>
                ${msg('Without them')}
              </button>
            </p>`
      }`;
  }

  private async bring(file: File, target: Target): Promise<void> {
    const points = parseTarget(new Uint8Array(await file.arrayBuffer()));
    this.refused = isTrouble(points) ? points.sentence : null;
    if (isTrouble(points)) return;
    this.file = file.name;
    this.tell({ ...target, points });
  }

  private tell(target: Target | null): void {
    this.dispatchEvent(new CustomEvent('ll-target', { detail: target }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-target-wish': TargetWish;
  }
  interface HTMLElementEventMap {
    'll-target': CustomEvent<Target | null>;
  }
}
