import { html } from 'lit';
import type { Layout } from '../../../src/system/channel';
import { channelName } from '../../../src/system/channel-names';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import type { Wired } from '../../../src/system/wiring/wiring';
import { asSentence } from '../../plan/layout-words';
import { patchCautions } from '../cautions';

/** The wiring as a page to take along: an output a row, with a box to tick. */
export function wiringPage(session: string, layout: Layout, sheet: ProcessorSheet, wired: Wired) {
  return html`<style>
      @media print {
        @page {
          margin: 15mm;
        }

        html {
          color-scheme: light;
        }

        body {
          background: #fff;
          color: #000;
        }

        body > :not(.printed) {
          display: none;
        }

        .printed {
          font: 11pt / 1.35 var(--face);
        }

        .printed h1 {
          margin: 0 0 2mm;
          font-size: 16pt;
        }

        .printed table {
          width: 100%;
          margin-block: 4mm;
          border-collapse: collapse;
        }

        .printed thead {
          display: table-header-group;
        }

        .printed th,
        .printed td {
          padding: 1.8mm 3mm 1.8mm 0;
          border-bottom: 0.3mm solid #999;
          text-align: left;
        }

        .printed tr {
          break-inside: avoid;
        }

        .printed .box {
          display: inline-block;
          width: 5mm;
          height: 5mm;
          border: 0.4mm solid #000;
        }

        .printed li {
          font-size: 9pt;
        }
      }
    </style>
    <h1>Wiring of ${session}, ${layout.title}</h1>
    <p>
      Processor:
      ${sheet.name}${sheet.invented ? ' (an invented sample, no existing processor)' : ''}
    </p>
    <table>
      <thead>
        <tr>
          <th>Output</th>
          <th>Channel</th>
          <th>Speaker</th>
          <th>Done</th>
        </tr>
      </thead>
      <tbody>
        ${sheet.outputs.map((output) => {
          const one = wired.outputs.find((each) => each.output === output.id);
          return html`<tr>
            <td>${output.name}</td>
            <td>${one ? one.channel : '–'}</td>
            <td>
              ${
                one
                  ? `${asSentence(channelName(one.channel))}${one.role === one.channel ? '' : `, plays as ${one.role}`}`
                  : 'stays open'
              }
            </td>
            <td>${one ? html`<span class="box"></span>` : ''}</td>
          </tr>`;
        })}
      </tbody>
    </table>
    <ul>
      ${patchCautions(layout).map((caution) => html`<li>${caution}</li>`)}
    </ul>`;
}
