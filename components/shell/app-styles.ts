import { css } from 'lit';

export const appStyles = css`
  :host {
    display: grid;
    grid-template:
      'header rail' 3.5rem 'side main' minmax(0, 1fr)
      'strip strip' auto / 20rem minmax(0, 1fr);
    height: 100dvh;
    overflow: hidden;
    background: var(--paper);
    color: var(--ink);
  }

  header {
    grid-area: header;
    grid-column: 1 / 3;
    grid-row: 1;
    display: flex;
    align-items: center;
    gap: var(--space-3);
    min-width: 0;
    padding-left: var(--space-4);
    border-bottom: var(--line-strong) solid var(--ink);
  }

  ll-rail {
    grid-area: rail;
    justify-self: end;
    height: 3.5rem;
    margin-right: calc(4rem + var(--target) + var(--space-3));
  }

  ll-side {
    grid-area: side;
    border-right: var(--line) solid var(--rule);
    overflow: hidden auto;
  }

  main {
    grid-area: main;
    display: flex;
    flex-direction: column;
    gap: var(--space-4);
    min-width: 0;
    padding: var(--space-4) var(--space-5);
    overflow: hidden auto;
    /* What is placed absolutely inside scrolls along instead of making the page longer. */
    position: relative;
    outline: none;
  }

  ll-strip {
    grid-area: strip;
  }

  .mark {
    display: flex;
    align-items: center;
    gap: 0.6rem;
    min-height: var(--target);
    font-weight: 700;
    font-size: 1.2rem;
    color: inherit;
    text-decoration: none;
  }

  .mark svg {
    width: 1rem;
    height: 1.9rem;
  }

  .line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.6;
  }

  .bob {
    fill: var(--signal);
  }

  .session {
    display: flex;
    align-items: center;
    min-width: 0;
    color: var(--soft);
  }

  /* Beside the stages a long name gives way. */
  @media (min-width: 56rem) {
    ll-session-name {
      max-width: clamp(5rem, 100vw - 60rem, 15rem);
    }
  }

  .layout {
    white-space: nowrap;
  }

  .simulated {
    flex: none;
    padding: 0.1rem var(--space-2);
    border: var(--line-strong) dashed var(--signal);
    border-radius: var(--radius);
    color: var(--signal);
    font-size: var(--text-small);
    font-weight: 700;
    white-space: nowrap;
  }

  ll-settings-button {
    margin-left: auto;
  }

  ll-theme-button {
    margin-right: var(--space-3);
  }

  /* Kept in place, so that their next sentence is announced; no room while they say nothing. */
  ll-trouble.quiet,
  ll-other-tab[quiet],
  ll-new-version[quiet] {
    margin-bottom: calc(-1 * var(--space-4));
  }

  @media (max-width: 80rem) {
    .where {
      display: none;
    }
  }

  @media (max-width: 68rem) {
    :host {
      grid-template-columns: 17rem minmax(0, 1fr);
    }

    .layout,
    .mark span {
      display: none;
    }

    main {
      padding: var(--space-4);
    }
  }

  /* The phone in the hand, and any window zoomed to its size: one column that scrolls, strip fixed. */
  @media (max-width: 56rem) {
    :host {
      display: block;
      height: auto;
      min-height: 100dvh;
      overflow: visible;
      padding-bottom: 8rem;
    }

    header {
      min-height: 3.25rem;
      padding-left: var(--space-3);
      border-bottom: 0;
      gap: var(--space-2);
    }

    .icon {
      width: 2.25rem;
    }

    ll-theme-button {
      margin-right: var(--space-1);
    }

    ll-rail {
      position: sticky;
      top: 0;
      z-index: 2;
      display: block;
      justify-self: stretch;
      height: 2.75rem;
      margin: 0;
      border-bottom: var(--line-strong) solid var(--ink);
      background: var(--paper);
    }

    ll-side {
      border-right: 0;
      border-bottom: var(--line) solid var(--rule);
    }

    main {
      overflow: visible;
      padding: var(--space-4) var(--space-3);
    }

    ll-strip {
      position: fixed;
      inset: auto 0 0;
      z-index: 2;
    }
  }

  /* No room for both: the theme is among the settings. */
  @media (max-width: 30rem) {
    ll-theme-button {
      display: none;
    }
  }

  /* No room for a row of all buttons: the last ones go below. */
  @media (max-width: 23.5rem) {
    header {
      flex-wrap: wrap;
    }
  }
`;
