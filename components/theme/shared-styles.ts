import { css } from 'lit';

/** What every element of the bench starts from: box model, focus, headings, sheets, figures. */
export const sharedStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }

  :host([hidden]) {
    display: none;
  }

  :focus-visible {
    outline: var(--focus);
    outline-offset: 2px;
  }

  [data-revealed] {
    outline: var(--focus);
    outline-offset: 2px;
  }

  h1,
  h2,
  h3,
  p,
  dl,
  dd,
  ul,
  ol {
    margin: 0;
  }

  h1 {
    font-size: var(--text-title);
    line-height: 1.2;
    font-weight: 700;
    text-wrap: balance;
  }

  h2 {
    font-size: var(--text-strong);
    line-height: 1.3;
    font-weight: 700;
  }

  h3 {
    font-size: var(--text);
    font-weight: 700;
  }

  p {
    max-width: 68ch;
    text-wrap: pretty;
  }

  a {
    color: inherit;
    text-underline-offset: 0.2em;
  }

  summary {
    min-height: 1.6rem;
    align-content: center;
    cursor: pointer;
  }

  .lede {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-4);
    align-items: baseline;
  }

  .soft,
  .lede p {
    color: var(--soft);
  }

  .small {
    font-size: var(--text-small);
  }

  .num {
    font-family: var(--mono);
    font-variant-numeric: tabular-nums;
  }

  .signal {
    color: var(--signal);
  }

  .sheet {
    background: var(--sheet);
    border: var(--line) solid var(--rule);
    border-radius: var(--radius);
    padding: var(--space-4);
    min-width: 0;
  }

  .scroll {
    position: relative;
    overflow-x: auto;
  }

  table {
    border-collapse: collapse;
    width: 100%;
  }

  th,
  td {
    padding: var(--space-1) var(--space-2);
    text-align: right;
    border-bottom: var(--line) solid var(--rule);
    font-weight: 400;
    vertical-align: baseline;
  }

  thead th {
    color: var(--soft);
    font-size: var(--text-small);
  }

  th:first-child,
  td:first-child,
  .left {
    text-align: left;
  }

  tr.pick > * {
    background: var(--wash);
    font-weight: 700;
  }

  .facts {
    display: grid;
    grid-template-columns: minmax(0, auto) minmax(0, auto);
    justify-content: space-between;
    gap: var(--space-1) var(--space-3);
  }

  .facts dt {
    color: var(--soft);
  }

  .facts dd {
    text-align: right;
  }

  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }

  @media (prefers-reduced-motion: reduce) {
    *,
    *::before,
    *::after {
      animation: none !important;
      transition: none !important;
    }
  }
`;
