import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DistortionReading } from '../../../src/reading/reading';
import { readDrives, type DriveReading } from '../../../src/reading/lowest-frequency';
import type { BenchState } from '../../../src/session/bench';
import type { Channel } from '../../../src/system/channel';
import type { CurveAxes } from '../../charts/curve/curve-trace';
import '../../charts/curve/curve-chart';
import '../../charts/distortion-chart';
import { dbText } from '../../../src/locale/number-text';
import { groupColour } from '../../group-colour';
import { sharedStyles } from '../../theme/shared-styles';

/** Distortion of one speaker at the levels it was played at, and how low it can be asked to play. */
@customElement('ll-drive-view')
export class DriveView extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4);
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
      }
    `,
  ];

  @property({ attribute: false }) state: BenchState | null = null;
  @property({ attribute: false }) channel: Channel | null = null;

  override render() {
    const { state, channel } = this;
    if (!state || !channel) return nothing;
    const drives = drivesOf(state, channel);
    const loudest = drives.at(-1);
    if (!loudest)
      return html`<p>${msg(str`No distortion of ${channel.label} was read here yet.`)}</p>`;
    const read = readDrives(channel, drives);
    return html`<ll-distortion-chart
        .distortion=${loudest.distortion}
        .channel=${drives.length > 1 ? msg(str`${channel.label} at ${dbText(loudest.driveDb, 0)}`) : channel.label}
        .colour=${groupColour(channel.group)}
      ></ll-distortion-chart>
      ${this.compression(read, channel)}
      <section aria-labelledby="lowest">
        <h3 id="lowest">${msg('How low it can be asked to play')}</h3>
        <ul>
          ${[...read.lowest.map(({ sentence }) => sentence), ...read.notes].map(
            (sentence) => html`<li>${sentence}</li>`,
          )}
        </ul>
      </section>`;
  }

  private compression({ levels }: DriveReading, channel: Channel) {
    const louder = levels.slice(1);
    if (louder.length === 0) return nothing;
    const axes: CurveAxes = {
      x: { kind: 'frequency', low: 15, high: 20_000 },
      y: { unit: 'dB', digits: 2, low: -4, high: 2 },
    };
    const base = levels[0]?.driveDb ?? 0;
    const strokes = ['solid', 'dashed', 'dotted'] as const;
    return html`<ll-curve-chart
      label=${msg(str`Change of gain of ${channel.label} against ${dbText(base, 0)}`)}
      .axes=${axes}
      .traces=${louder.map(({ driveDb, reading, gainChangeDb }, n) => ({
        name: msg(str`at ${dbText(driveDb, 0)}`),
        colour: groupColour(channel.group),
        stroke: strokes[n % strokes.length] ?? 'solid',
        x: reading.hz,
        y: gainChangeDb,
      }))}
    ></ll-curve-chart>`;
  }
}

/** The newest distortion of a speaker at each level it was played at here, quietest first. */
export function drivesOf(
  { document, layout }: BenchState,
  { label }: Channel,
): { readonly driveDb: number; readonly distortion: DistortionReading }[] {
  const byLevel = new Map<number, DistortionReading>();
  for (const { position, schedule, readings, gainDb = 0 } of document.takes) {
    if (position.id !== document.position.id || schedule.layout !== layout.name) continue;
    const reading = readings?.channels.find(({ channel }) => channel === label);
    if (reading?.distortion) byLevel.set(gainDb, reading.distortion);
  }
  return [...byLevel]
    .map(([driveDb, distortion]) => ({ driveDb, distortion }))
    .sort((a, b) => a.driveDb - b.driveDb);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-drive-view': DriveView;
  }
}
