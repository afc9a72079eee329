import { css } from 'lit';

/** The panel of sessions: over the page, as wide as it needs, never wider than the screen. */
export const sessionsStyles = css`
  dialog {
    width: min(46rem, calc(100vw - 1.5rem));
    max-height: calc(100dvh - 1.5rem);
    padding: 0;
    border: var(--line-strong) solid var(--ink);
    border-radius: var(--radius);
    background: var(--sheet);
    color: var(--ink);
    overflow: hidden auto;
  }

  dialog::backdrop {
    background: color-mix(in oklab, var(--ink), transparent 55%);
  }

  .content {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    padding: var(--space-4);
  }

  .head,
  .actions {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--space-2);
  }

  .head {
    justify-content: space-between;
  }

  ul {
    padding: 0;
    list-style: none;
  }

  .quiet {
    display: none;
  }
`;
