import { css } from 'lit';

/** Bars of the ledger: who plays which stretch, by hue and by hatching. */
export const ledgerStyles = css`
  :host {
    display: block;
    position: relative;
    min-width: 0;
    container-type: inline-size;
  }

  table {
    table-layout: fixed;
  }

  th,
  td {
    padding-block: 0.1rem;
    vertical-align: middle;
    border-bottom: 0;
  }

  th[scope='row'],
  th.name {
    width: 5.2rem;
    padding-inline-start: 0;
    white-space: nowrap;
  }

  .name button {
    display: inline-flex;
    gap: 0.35rem;
    align-items: center;
    min-height: 1.5rem;
    padding: 0;
    border: 0;
    background: none;
    color: inherit;
    font: inherit;
    cursor: pointer;
  }

  th.loss,
  td.loss {
    width: 5.4rem;
    padding-inline-end: 0;
    white-space: nowrap;
  }

  .bar {
    position: relative;
    display: block;
    height: 0.95rem;
    background: var(--track);
    /* Moving bars lay out nothing else. */
    contain: strict;
  }

  .none {
    background: var(--sheet);
  }

  .bar span {
    position: absolute;
    inset-block: 0;
  }

  /* Thinner as well as of another hue: told apart without colour. */
  .bar span.carried {
    inset-block: 0.27rem;
  }

  .carried.subs {
    background: var(--sub);
  }

  .carried.fronts {
    background: var(--front);
  }

  .nobody {
    background: repeating-linear-gradient(135deg, var(--signal) 0 2px, var(--wash) 2px 6px);
    outline: 1px solid var(--signal);
    outline-offset: -1px;
  }

  .axis {
    position: relative;
    height: 1.2rem;
  }

  .axis span {
    position: absolute;
    translate: -50% 0;
    font-size: 12px;
    font-variant-numeric: tabular-nums;
  }

  .axis span:first-child {
    translate: 0 0;
  }

  .axis span:last-child {
    translate: -100% 0;
    white-space: nowrap;
  }

  .key {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-1) var(--space-4);
    margin-block-start: var(--space-2);
    font-size: var(--text-small);
    color: var(--soft);
  }

  .key span {
    display: inline-flex;
    gap: var(--space-2);
    align-items: center;
  }

  .key i {
    width: 1.4rem;
    height: 0.8rem;
  }

  .key i.carried {
    height: 0.4rem;
  }

  .key i.own {
    background: linear-gradient(90deg, var(--front) 50%, var(--surround) 50%);
  }

  @container (max-width: 32rem) {
    .wide-only {
      display: none;
    }

    th[scope='row'],
    th.name {
      width: 4.2rem;
    }

    th.loss,
    td.loss {
      width: 4.2rem;
    }

    ll-speaker-icon {
      display: none;
    }
  }
`;
