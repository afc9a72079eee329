import { msg } from '@lit/localize';
import { LitElement, css, html, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Updates } from '../../src/offline/updates';
import { versionWords } from '../../src/offline/version-words';
import { pageVersion } from '../page-version';
import { sharedStyles } from '../theme/shared-styles';
import { UpdatesController } from './updates-controller';

/** Which version this is, and whether it opens without the network. */
@customElement('ll-version')
export class VersionLine extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) updates: Updates | null = null;
  private readonly versions = new UpdatesController(this);

  protected override render(): TemplateResult {
    const kept = this.versions.state?.kept === true;
    return html`<p class="small soft">
      ${versionWords(pageVersion())}.
      ${
        kept
          ? msg('Kept in this browser: it opens without the network.')
          : msg('Not kept in this browser: it opens from where it came from.')
      }
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-version': VersionLine;
  }
}
