import { msg, str } from '@lit/localize';
import { stateWord } from '../../../src/locale/state-words';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import type { VisitFigure, VisitFinding, VisitVerdict } from '../../../src/visits/visits';
import { BenchController } from '../../bench-controller';
import { intervalText, numberText, signedText, thinSpace } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import { askToSelect } from '../../events';
import { sharedStyles } from '../../theme/shared-styles';
import { proofLinesStyles } from '../proof-lines-styles';
import { comparedVisits } from './compared';

const marks: Readonly<Record<VisitVerdict, string>> = {
  changed: '≠',
  'cannot tell': '?',
  'as it was': '✓',
};
const looks: Readonly<Record<VisitVerdict, string>> = {
  changed: 'fail',
  'cannot tell': 'untold',
  'as it was': 'pass',
};
const digits = { m: 2, dB: 1, octaves: 2, '°C': 1 } as const;
/** More than so many that cannot be told are folded. */
const mostOpen = 4;

/** What changed, then what cannot be told, then what is as it was, the last folded. */
@customElement('ll-visit-findings')
export class VisitFindings extends LitElement {
  static override styles = [sharedStyles, buttonStyles, proofLinesStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    const comparison = state && comparedVisits(state)?.comparison;
    if (!comparison) return nothing;
    const of = (verdict: VisitVerdict) =>
      comparison.findings.filter((finding) => finding.verdict === verdict);
    const several = new Set(comparison.findings.flatMap(({ position }) => position ?? [])).size > 1;
    const [changed, untold, same] = [of('changed'), of('cannot tell'), of('as it was')];
    return html`${
      changed.length === 0
        ? html`<p>${msg('Nothing lies surely outside the intervals of both visits.')}</p>`
        : html`<ul aria-label=${msg('What changed')}>
            ${changed.map((finding) => this.finding(finding, several, isFirst(finding, changed)))}
          </ul>`
    }
    ${this.folded(untold, several, msg('cannot be told'), untold.length <= mostOpen)}
    ${this.folded(same, several, same.length === 1 ? msg('is as it was') : msg('are as they were'), false)}`;
  }

  private folded(
    findings: readonly VisitFinding[],
    several: boolean,
    words: string,
    open: boolean,
  ) {
    if (findings.length === 0) return nothing;
    return html`<details ?open=${open}>
      <summary>${findings.length} ${words}</summary>
      <ul>
        ${findings.map((finding) => this.finding(finding, several))}
      </ul>
    </details>`;
  }

  private finding(finding: VisitFinding, several: boolean, isFirst = false) {
    const { id, verdict, sentence, figure, action, position, channels } = finding;
    const [label] = channels;
    return html`<li class=${looks[verdict]} data-finding=${id}>
      <span class="mark" aria-hidden="true">${marks[verdict]}</span>
      <div>
        <p>
          <span class="unseen">${stateWord(verdict)}: </span>${sentence}
          ${position === null || !several ? nothing : html`<span class="soft small">${position}</span>`}
        </p>
        ${verdict === 'as it was' || !figure ? nothing : html`<p class="small">${figureText(figure)}</p>`}
        ${action === null ? nothing : html`<p class="small">${action}</p>`}
        ${
          isFirst && position !== null && label !== undefined
            ? html`<button class="plain small" @click=${() => askToSelect(this, label)}>
                ${msg(str`Show ${label} then and now`)}
              </button>`
            : nothing
        }
      </div>
    </li>`;
  }
}

/** Whether it is the first about its speaker: one button for each is enough. */
function isFirst({ id, channels }: VisitFinding, findings: readonly VisitFinding[]): boolean {
  const first = findings.find(
    // A speaker that is silent has no curves to show.
    ({ matter, position, channels: [label] }) =>
      matter !== 'take' && position !== null && label === channels[0],
  );
  return first?.id === id;
}

/** The change a finding was judged by, beside what counts as none. */
function figureText({ value, interval, allowed, unit }: VisitFigure): string {
  const places = digits[unit];
  const read = `${signedText(value, places)}${thinSpace}${unit} (${intervalText(interval, places)})`;
  return msg(
    str`${read}; up to ±${numberText(allowed[1], places)}${thinSpace}${unit} counts as no change.`,
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'll-visit-findings': VisitFindings;
  }
}
