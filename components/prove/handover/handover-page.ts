import { html, nothing, type SVGTemplateResult } from 'lit';
import type { Handover, HandoverFact, HandoverLine } from '../../../src/handover/handover';
import { sayTime } from '../../../src/handover/handover-conditions';
import { startSentence } from '../../../src/proposal/phrases';
import { heldClaims } from './held-claims';

const dash = '–';
const marks = { fail: '✗', 'cannot tell': '?', pass: '✓' } as const;

/** The record as one page, black on white. */
export function handoverPage(handover: Handover, plan: SVGTemplateResult) {
  const { session, layout, madeAt, simulated, processor, subs, cautions, notes } = handover;
  return html`<article class="handover ${simulated ? 'simulated' : ''}">
    <h1>${session}, ${layout}</h1>
    <p>
      ${simulated ? html`<b>Simulated.</b> ` : nothing}${processor === null ? 'Processor without a sheet.' : `Processor: ${processor}.`}
      Made ${sayTime(madeAt)}.
    </p>
    <div class="columns">
      <figure>${plan}</figure>
      <div>
        <h2>Conditions</h2>
        ${facts(handover.conditions)}
      </div>
    </div>
    ${outputs(handover)} ${subs.length === 0 ? nothing : html`<h2>Subs</h2>${facts(subs)}`}
    ${proof(handover)}
    ${
      cautions.length === 0
        ? nothing
        : html`<h2>Cautions</h2>
            <ul>
              ${cautions.map((text) => html`<li>${text}</li>`)}
            </ul>`
    }
    ${
      notes === ''
        ? nothing
        : html`<h2>Notes</h2>
            <p class="notes">${notes}</p>`
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
  return html`<h2>Wiring and settings</h2>
    <table>
      <thead>
        <tr>
          <th>Output</th>
          <th>Speaker</th>
          <th>Distance</th>
          <th>Level</th>
          <th>Crossover</th>
        </tr>
      </thead>
      <tbody>
        ${outputs.map(
          ({ output, channel, distance, level, crossover }) =>
            html`<tr>
              <td>${output}</td>
              <td>${channel ?? 'open'}</td>
              <td>${distance ?? dash}</td>
              <td>${level ?? dash}</td>
              <td>${crossover ?? dash}</td>
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
  return html`<h2>
      Proof: ${counts.pass} of ${lines.length} lines hold, ${counts.fail} fail,
      ${counts['cannot tell']} cannot be told
    </h2>
    <ul class="proof">
      ${open.map(
        ({ verdict, sentence, action }: HandoverLine) =>
          html`<li>${marks[verdict]} ${sentence}${action === null ? nothing : ` ${action}`}</li>`,
      )}
      ${heldClaims(lines).map((sentence) => html`<li>${marks.pass} ${sentence}</li>`)}
    </ul>`;
}
