import { css } from 'lit';

/** A named field with its unit, its hint and, when it is wrong, the sentence that says so. */
export const fieldStyles = css`
  .field {
    display: grid;
    gap: var(--space-1);
    justify-items: start;
  }

  .field > label {
    font-weight: 700;
  }

  .entry {
    display: inline-flex;
    align-items: center;
    gap: var(--space-2);
  }

  .entry input {
    width: 7.5rem;
    min-height: var(--target);
    padding: var(--space-1) var(--space-2);
    border: var(--line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--sheet);
    color: var(--ink);
    font: inherit;
    font-family: var(--mono);
  }

  .entry input[aria-invalid='true'] {
    border-color: var(--signal);
    border-width: 2px;
  }

  .wrong {
    color: var(--signal);
    font-weight: 700;
  }
`;
