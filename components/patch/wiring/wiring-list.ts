import { msg, str } from '@lit/localize';
import { html } from 'lit';
import type { Layout } from '../../../src/system/channel';
import { channelName } from '../../../src/system/channel-names';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import type { Wired } from '../../../src/system/wiring/wiring';
import { asSentence } from '../../plan/layout-words';
import { patchCautions } from '../cautions';

/** The wiring as a page to take along: an output a row, with a box to tick. */
export function wiringPage(session: string, layout: Layout, sheet: ProcessorSheet, wired: Wired) {
  return html`<h1>${msg(str`Wiring of ${session}, ${layout.title}`)}</h1>
    <p>
      ${msg(str`Processor: ${sheet.name}${sheet.invented ? msg(' (an invented sample, no existing processor)') : ''}`)}
    </p>
    <table>
      <thead>
        <tr>
          <th>${msg('Output')}</th>
          <th>${msg('Channel')}</th>
          <th>${msg('Speaker')}</th>
          <th>${msg('Done')}</th>
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
                  ? `${asSentence(channelName(one.channel))}${one.role === one.channel ? '' : msg(str`, plays as ${one.role}`)}`
                  : msg('stays open')
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
