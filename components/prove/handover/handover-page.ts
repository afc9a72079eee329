import { msg, str } from '@lit/localize';
import { html, nothing, type TemplateResult } from 'lit';
import type { Handover, HandoverFact, HandoverLine } from '../../../src/handover/handover';
import { utcText } from '../../../src/locale/date-text';
import { shownText } from '../../../src/proposal/settings-list';
import { startSentence } from '../../../src/proposal/phrases';
import { heldClaims } from './held-claims';
import { responseLine } from './response-line';

const dash = '–';
const marks = { fail: '✗', 'cannot tell': '?', pass: '✓' } as const;

/** The record as one page, black on white. */
export function handoverPage(handover: Handover, plan: TemplateResult) {
  const { session, layout, madeAt, simulated, processor, subs, cautions, notes } = handover;
  return html`<article class="handover ${simulated ? 'simulated' : ''}">
    <h2><bdi>${session}</bdi>, ${layout}</h2>
    <p>
      ${simulated ? html`<b>${msg('Simulated.')}</b> ` : nothing}${msg(str`${processor === null ? msg('Processor without a sheet.') : msg(str`Processor: ${processor}.`)} Made ${utcText(madeAt)}.`)}
    </p>
    <div class="columns">
      <figure>${plan}</figure>
      <div>
        <h3>${msg('Conditions')}</h3>
        ${facts(handover.conditions)}
        ${
          subs.length === 0
            ? nothing
            : html`<h3>${msg('Subs')}</h3>
                ${facts(subs.map(({ name, value }) => ({ name, value: shownText(value) })))}`
        }
      </div>
    </div>
    ${outputs(handover)} ${proof(handover)}
    ${
      cautions.length === 0
        ? nothing
        : html`<h3>${msg('Cautions')}</h3>
            <ul>
              ${cautions.map((text) => html`<li>${text}</li>`)}
            </ul>`
    }
    ${
      notes === ''
        ? nothing
        : html`<h3>${msg('Notes')}</h3>
            <p class="notes" dir="auto">${notes}</p>`
    }
  </article>`;
}

function facts(all: readonly HandoverFact[]) {
  return html`<dl>
    ${all.map(
      ({ name, value }) =>
        html`<div>
          <dt>${startSentence(name)}</dt>
          <dd>${value}</dd>
        </div>`,
    )}
  </dl>`;
}

function outputs({ outputs }: Handover) {
  return html`<h3>${msg('Wiring and settings')}</h3>
    <table>
      <thead>
        <tr>
          <th scope="col">${msg('Output')}</th>
          <th scope="col">${msg('Speaker')}</th>
          <th scope="col">${msg('Distance')}</th>
          <th scope="col">${msg('Level')}</th>
          <th scope="col">${msg('Crossover')}</th>
          <th class="curve" scope="col">${msg('Response, 20 Hz to 20 kHz, 50 dB high')}</th>
        </tr>
      </thead>
      <tbody>
        ${outputs.map(
          ({ output, channel, distance, level, crossover, response }) =>
            html`<tr>
              <td>${output}</td>
              <td>${channel ?? msg('open')}</td>
              <td>${distance === null ? dash : shownText(distance)}</td>
              <td>${level === null ? dash : shownText(level)}</td>
              <td>${crossover === null ? dash : shownText(crossover)}</td>
              <td class="curve">${responseLine(response)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
}

function proof({ proof }: Handover) {
  if (!proof) return nothing;
  const { counts, lines } = proof;
  const open = [
    ...lines.filter(({ verdict }) => verdict === 'fail'),
    ...lines.filter(({ verdict }) => verdict === 'cannot tell'),
  ];
  return html`<h3>
      ${msg(str`Proof: ${counts.pass} of ${lines.length} lines hold, ${counts.fail} fail, ${counts['cannot tell']} cannot be told`)}
    </h3>
    <ul class="proof">
      ${open.map(
        ({ verdict, sentence, action }: HandoverLine) =>
          html`<li>${marks[verdict]} ${sentence}${action === null ? nothing : ` ${action}`}</li>`,
      )}
      ${heldClaims(lines).map((sentence) => html`<li>${marks.pass} ${sentence}</li>`)}
    </ul>`;
}
