import { css } from 'lit';

/** A sheet of findings below a take: a sentence, a table, a detail to open. */
export const findingsStyles = css`
  :host {
    display: block;
  }

  .sheet {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-2);
  }

  summary {
    min-height: var(--target);
    padding-block: var(--space-2);
    cursor: pointer;
    font-weight: 700;
  }

  td,
  th {
    padding: var(--space-1);
    font-size: var(--text-small);
    white-space: nowrap;
  }
`;
