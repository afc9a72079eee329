import { css } from 'lit';

export const stripStyles = css`
  :host {
    display: block;
    container-type: inline-size;
  }

  footer {
    display: grid;
    grid-template-columns: minmax(12rem, 22rem) minmax(0, 1fr) auto auto;
    align-items: center;
    gap: var(--space-1) var(--space-5);
    min-height: 3.375rem;
    padding: var(--space-1) var(--space-4);
    border-top: var(--line-strong) solid var(--ink);
    background: var(--sheet);
  }

  .sound {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 var(--space-4);
    min-width: 0;
  }

  .busy,
  .left {
    font-weight: 700;
  }

  .left {
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }

  /* Where the page scrolls as a whole, the header's mark leaves the screen; this one stays. */
  .simulated {
    display: none;
    color: var(--signal);
    font-weight: 700;
  }

  @media (max-width: 56rem) {
    .simulated {
      display: inline;
    }
  }

  .kept {
    display: flex;
    flex-wrap: wrap;
    justify-content: end;
    gap: 0 var(--space-4);
    color: var(--soft);
    font-size: var(--text-small);
  }

  .stop {
    min-height: var(--target);
    padding: var(--space-1) var(--space-4);
    border: 0;
    border-radius: var(--radius);
    background: var(--ink);
    color: var(--on-ink);
    font-weight: 700;
    white-space: nowrap;
  }

  .stop.sounding {
    background: var(--signal);
    color: var(--on-signal);
  }

  kbd {
    margin-left: var(--space-2);
    font: inherit;
    font-weight: 400;
  }

  @container (max-width: 74rem) {
    footer {
      grid-template-columns: minmax(10rem, 18rem) minmax(0, 1fr) auto;
      padding-block: var(--space-2);
    }

    .kept {
      grid-area: 2 / 1 / 3 / 3;
      justify-content: start;
    }

    .stop {
      grid-area: 1 / 3 / 3 / 4;
    }
  }

  @container (max-width: 40rem) {
    footer {
      grid-template-columns: minmax(0, 1fr) auto;
      gap: 0 var(--space-3);
      padding: var(--space-2) var(--space-3);
    }

    .sound {
      grid-area: 2 / 1;
    }

    .kept {
      grid-area: 3 / 1 / 4 / 3;
    }

    .kept.saved,
    .kept.saving,
    .rig,
    .margin,
    kbd {
      display: none;
    }
  }
`;
