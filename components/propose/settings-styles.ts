import { css } from 'lit';

/** The table of settings, and how it gives way on a narrow screen. */
export const settingsStyles = css`
  :host {
    position: relative;
    display: grid;
    gap: var(--space-3);
    container-type: inline-size;
  }

  th,
  td {
    padding-block: 0.15rem;
    vertical-align: middle;
  }

  th[scope='row'] {
    padding-inline-start: 0;
  }

  button {
    display: flex;
    gap: var(--space-2);
    align-items: center;
    width: 100%;
    min-height: var(--target);
    padding: 0;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    text-align: left;
    cursor: pointer;
  }

  button > svg {
    flex: none;
    width: 0.8rem;
    fill: none;
    stroke: var(--soft);
    stroke-width: 2;
  }

  button[aria-expanded='true'] > svg {
    rotate: 90deg;
  }

  .label {
    white-space: nowrap;
  }

  .name {
    color: var(--soft);
    font-weight: 400;
  }

  small {
    display: block;
    font-family: var(--face);
    font-size: var(--text-small);
    font-weight: 400;
    line-height: 1.2;
  }

  td.num {
    white-space: nowrap;
  }

  .why td {
    padding: var(--space-2) var(--space-2) var(--space-3) 2rem;
    text-align: left;
  }

  .why dl {
    display: grid;
    grid-template-columns: max-content minmax(0, 1fr);
    gap: var(--space-1) var(--space-4);
  }

  .why dt:not(.signal) {
    color: var(--soft);
  }

  .why dd {
    max-width: 68ch;
  }

  @container (max-width: 34rem) {
    .name,
    ll-speaker-icon {
      display: none;
    }

    th,
    td {
      padding-inline: 0.12rem;
    }

    table {
      font-size: var(--text-small);
    }

    td.num {
      letter-spacing: -0.04em;
    }

    button {
      flex-wrap: wrap;
      gap: 0 var(--space-1);
      align-content: center;
    }

    .why td {
      padding-inline-start: 1.2rem;
    }

    .why dl {
      grid-template-columns: minmax(0, 1fr);
    }

    .why dd {
      margin-block-end: var(--space-1);
    }
  }
`;
