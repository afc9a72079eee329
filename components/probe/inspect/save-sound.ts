import { msg, str } from '@lit/localize';
import { LitElement, css, html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { curvesToCsv, type SavedCurve } from '../../../src/inspect/curves-to-csv';
import type { FileFacts } from '../../../src/inspect/file-name';
import { responseToWav } from '../../../src/inspect/response-to-wav';
import type { Bench } from '../../../src/session/bench';
import type { CurveAxes, CurveTrace } from '../../charts/curve/curve-trace';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { saveFile } from '../take/save-file';
import type { Asked } from './asked';
import type { ShownSource } from './inspect-sources';

/** A chart whose curves can be saved. */
export interface SavedDrawing {
  readonly title: string;
  readonly traces: readonly CurveTrace[];
  readonly axes: CurveAxes;
}

/** Saves what is drawn as comma-separated values, and impulse responses as WAV. */
@customElement('ll-save-sound')
export class SaveSound extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      div {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-2) var(--space-3);
        align-items: center;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) sources: readonly ShownSource[] = [];
  @property({ attribute: false }) drawings: readonly SavedDrawing[] = [];
  @property({ attribute: false }) asked: Asked | null = null;
  @state() private said = '';

  override render() {
    const many = this.sources.length > 1;
    return html`<div>
      <button class="ghost" @click=${() => this.saveCurves()}>
        ${msg('Save the curves (CSV)')}
      </button>
      <button class="ghost" @click=${() => void this.saveResponses()}>
        ${msg(str`Save the impulse response${many ? 's' : ''} (WAV)`)}
      </button>
      <span class="soft small" role="status">${this.said}</span>
    </div>`;
  }

  private saveCurves(): void {
    const facts = this.facts(this.sources.length === 1 ? (this.sources[0] ?? null) : null);
    let files = 0;
    for (const { title, traces, axes } of this.drawings) {
      const curves = traces.map((trace) => savedCurve(trace, axes));
      for (const { name, text } of curvesToCsv(curves, facts, title.toLowerCase())) {
        saveFile(name, new Blob([text], { type: 'text/csv' }));
        files++;
      }
    }
    this.said = files === 1 ? msg('Saved one file.') : msg(str`Saved ${files} files.`);
  }

  private async saveResponses(): Promise<void> {
    let files = 0;
    for (const source of this.sources) {
      const { takeId, channel } = source;
      const answer = await this.asked?.once({ kind: 'impulse', source: { takeId, channel } });
      if (!answer) continue;
      const { name, bytes } = responseToWav(answer.ir, this.facts(source));
      saveFile(name, new Blob([bytes], { type: 'audio/wav' }));
      files++;
    }
    this.said =
      files === 1
        ? msg('Saved one file.')
        : files === 0
          ? msg('Nothing to save.')
          : msg(str`Saved ${files} files.`);
  }

  private facts(source: ShownSource | null): FileFacts {
    const document = this.bench?.state.document;
    const takeId = (source ?? this.sources[0])?.takeId;
    const take = document?.takes.find(({ id }) => id === takeId);
    return {
      layout: document?.layout ?? '',
      speaker: source?.channel ?? null,
      position: take?.position.name ?? '',
      takenAt: take?.startedAt ?? '',
    };
  }
}

function savedCurve({ name, x, y }: CurveTrace, axes: CurveAxes): SavedCurve {
  const axis =
    axes.x.kind === 'frequency'
      ? ({ name: 'frequency', unit: 'Hz', values: x } as const)
      : ({ name: 'time', unit: 's', values: x } as const);
  const { unit, digits } = axes.y;
  return {
    name,
    unit: unit === '' ? '1' : unit,
    axis,
    values: y,
    digits: { decimals: digits + 1 },
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'll-save-sound': SaveSound;
  }
}
