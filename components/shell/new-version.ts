import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Updates } from '../../src/offline/updates';
import type { Bench } from '../../src/session/bench';
import { BenchController } from '../bench-controller';
import { bannerStyles } from '../controls/banner-styles';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { isAtRest, mayReload } from './may-reload';
import { UpdatesController } from './updates-controller';

/**
 * Offers a newer version of the app once nothing runs, and loads it when the person wants it.
 * Carries the attribute `quiet` while it says nothing.
 */
@customElement('ll-new-version')
export class NewVersion extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    bannerStyles,
    css`
      .banner {
        border-color: var(--ink);
        background: var(--sheet);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) updates: Updates | null = null;
  private readonly follow = new BenchController(this);
  private readonly versions = new UpdatesController(this);

  protected override render(): TemplateResult {
    const state = this.follow.state;
    const offered = this.offered;
    const may = state !== null && mayReload(state);
    return html`<div role="status" class=${offered ? 'banner' : ''}>
      ${
        offered
          ? html`<p>
                ${msg(
                  str`A new version is ready. ${
                    may
                      ? msg(
                          'Loading it keeps all sessions; what was changed until then can no longer be undone.',
                        )
                      : msg('This session could not be stored: save it as a file first.')
                  }`,
                )}
              </p>
              <button class="ghost" ?disabled=${!may} @click=${this.load}>
                ${msg('Load the new version')}
              </button>`
          : nothing
      }
    </div>`;
  }

  protected override updated(): void {
    this.toggleAttribute('quiet', !this.offered);
  }

  private get offered(): boolean {
    const state = this.follow.state;
    return this.versions.state?.ready === true && state !== null && isAtRest(state);
  }

  private readonly load = (): void => {
    const state = this.follow.state;
    if (state && mayReload(state)) this.updates?.takeOver();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-new-version': NewVersion;
  }
}
