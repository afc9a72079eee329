import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { iconButtonStyles } from './icon-button-styles';

type Way = 'undo' | 'redo';

const words: Readonly<Record<Way, { label: string; done: string; keys: string }>> = {
  undo: {
    get label() {
      return msg('Undo');
    },
    get done() {
      return msg('Undone');
    },
    get keys() {
      return msg('Ctrl or Cmd + Z');
    },
  },
  redo: {
    get label() {
      return msg('Redo');
    },
    get done() {
      return msg('Done again');
    },
    get keys() {
      return msg('Ctrl or Cmd + Shift + Z');
    },
  },
};

/** Undo and redo, each with the name of the change it would take back or bring back. */
@customElement('ll-history-buttons')
export class HistoryButtons extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    iconButtonStyles,
    css`
      :host {
        display: flex;
        position: relative;
        flex: none;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private said = '';
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    if (!this.follow.state) return nothing;
    return html`${this.renderButton('undo')}${this.renderButton('redo')}
      <span class="unseen" role="status">${this.said}</span>`;
  }

  /** Walks one step and says which; the same for buttons and keys. */
  walk(way: Way): void {
    const { bench } = this;
    const name = bench?.state.history[way] ?? null;
    if (!bench || name === null) return;
    bench[way]();
    // Refused while something runs: the bench says so itself.
    if (bench.state.activity.kind === 'idle') this.said = `${words[way].done}: ${name}`;
  }

  private renderButton(way: Way): TemplateResult {
    const name = this.follow.state?.history[way] ?? null;
    const busy = this.follow.state?.activity.kind !== 'idle';
    const { label, keys } = words[way];
    const said = name === null ? msg(str`${label}: nothing`) : `${label}: ${name}`;
    return html`<button
      class="icon ${way}"
      aria-label=${said}
      title="${said} (${keys})"
      ?disabled=${name === null || busy}
      @click=${() => this.walk(way)}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">${icons[way]}</svg>
    </button>`;
  }
}

const icons = {
  undo: svg`<path d="M7 4L3 8l4 4M3 8h9a5 5 0 0 1 0 10H8"></path>`,
  redo: svg`<path d="M13 4l4 4-4 4M17 8H8a5 5 0 0 0 0 10h4"></path>`,
};

declare global {
  interface HTMLElementTagNameMap {
    'll-history-buttons': HistoryButtons;
  }
}
