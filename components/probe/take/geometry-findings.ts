import { msg } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { css, html, nothing, type PropertyValues } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import { checkGeometry } from '../../../src/reading/geometry';
import type { GeometryFinding } from '../../../src/reading/geometry-finding';
import type { Readings } from '../../../src/reading/reading';
import type { Layout } from '../../../src/system/channel';
import { nothingInForce, type DeclaredSettings } from '../../../src/system/declared-settings';
import { nothingDeclared, type DeclaredSystem } from '../../../src/system/declared-system';
import { sharedStyles } from '../../theme/shared-styles';

/** What the measured distances say beside plan, tape and one another; hidden when that is nothing. */
@customElement('ll-geometry-findings')
export class GeometryFindings extends LaterElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      .sheet {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) readings: Readings | null = null;
  @property({ attribute: false }) layout: Layout | null = null;
  @property({ attribute: false }) system: DeclaredSystem = nothingDeclared;
  @property({ attribute: false }) inForce: DeclaredSettings = nothingInForce;
  private findings: readonly GeometryFinding[] = [];
  /** The locale they were said in. */
  private saidIn = localeInForce();

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.size === 0 && this.saidIn === localeInForce()) return;
    this.saidIn = localeInForce();
    const { readings, layout, system, inForce } = this;
    this.findings =
      readings && layout?.name === readings.layout
        ? checkGeometry(readings, layout, system, inForce)
        : [];
    this.hidden = this.findings.length === 0;
  }

  override render() {
    if (this.findings.length === 0) return nothing;
    return html`<section class="sheet" aria-labelledby="geometry">
      <h2 id="geometry">${titleOf(this.findings)}</h2>
      ${this.findings.map(
        ({ sentence, wantsAction }) =>
          html`<p class=${wantsAction ? 'signal' : ''}>${sentence}</p>`,
      )}
    </section>`;
  }
}

function titleOf(findings: readonly GeometryFinding[]): string {
  if (findings.some(({ wantsAction }) => wantsAction))
    return msg('Distances and plan do not agree');
  return findings.some(({ kind }) => kind === 'agrees' || kind === 'tape')
    ? msg('Distances and plan agree')
    : msg('Distances beside one another');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-geometry-findings': GeometryFindings;
  }
}
