import { css } from 'lit';

/** What a check found, one block a finding, and the buttons under it. */
export const findingStyles = css`
  :host {
    display: grid;
    gap: var(--space-4);
  }

  .finding {
    display: grid;
    gap: var(--space-1);
    padding-left: var(--space-3);
    border-left: 4px solid var(--signal);
  }

  ol {
    padding-left: 1.3rem;
  }

  .row {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }
`;
