import { css } from 'lit';

/** A named list to choose one of, as wide as its place. */
export const selectStyles = css`
  .select {
    display: grid;
    gap: var(--space-1);
    font-weight: 700;
    min-width: 0;
  }

  select {
    width: 100%;
    min-width: 0;
    min-height: var(--target);
    padding: var(--space-1) var(--space-2);
    border: var(--line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--sheet);
    color: var(--ink);
    font: inherit;
    font-weight: 400;
    text-overflow: ellipsis;
  }

  select:disabled {
    border-color: var(--rule);
    color: var(--soft);
    cursor: not-allowed;
  }
`;
