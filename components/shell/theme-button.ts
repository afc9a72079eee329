import { msg, str } from '@lit/localize';
import { LitElement, css, html, svg, type SVGTemplateResult, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { Theme } from '../../src/session/document';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { ThemeController } from './theme-controller';

const after: Record<Theme, Theme> = { system: 'light', light: 'dark', dark: 'system' };
const names: Record<Theme, string> = {
  get system() {
    return msg('as the system');
  },
  get light() {
    return msg('light');
  },
  get dark() {
    return msg('dark');
  },
};

/** Walks through the themes: as the system, light, dark. */
@customElement('ll-theme-button')
export class ThemeButton extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      button {
        display: grid;
        place-items: center;
        width: var(--target);
        height: var(--target);
        border: 0;
        border-radius: var(--radius);
        background: none;
      }

      button:hover {
        background: var(--track);
      }

      svg {
        width: 1.25rem;
        height: 1.25rem;
        fill: none;
        stroke: currentColor;
        stroke-width: 1.6;
        stroke-linecap: round;
      }

      .full {
        fill: currentColor;
      }
    `,
  ];

  private readonly themes = new ThemeController(this);

  protected override render(): TemplateResult {
    const { theme } = this.themes;
    const said = msg(str`Theme: ${names[theme]}. Change to ${names[after[theme]]}.`);
    return html`<button
      aria-label=${said}
      title=${said}
      @click=${() => this.themes.choose(after[theme])}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">${icons[theme]}</svg>
    </button>`;
  }
}

const icons: Record<Theme, SVGTemplateResult> = {
  system: svg`<circle cx="10" cy="10" r="7"></circle><path class="full" d="M10 3a7 7 0 0 1 0 14z"></path>`,
  light: svg`<circle class="full" cx="10" cy="10" r="3.5"></circle><path d="M10 1.5v2M10 16.5v2M1.5 10h2M16.5 10h2M4 4l1.4 1.4M14.6 14.6L16 16M4 16l1.4-1.4M14.6 5.4L16 4"></path>`,
  dark: svg`<path class="full" d="M15.5 12.5A6.5 6.5 0 0 1 7.5 4.5a6.5 6.5 0 1 0 8 8z"></path>`,
};

declare global {
  interface HTMLElementTagNameMap {
    'll-theme-button': ThemeButton;
  }
}
