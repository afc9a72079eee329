import { css } from 'lit';

/** Speakers as buttons in columns, each with what was found of it. */
export const speakerListStyles = css`
  :host {
    display: block;
  }

  ol {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 15rem), 1fr));
    gap: var(--space-1) var(--space-3);
    margin: 0;
    padding: 0;
    list-style: none;
  }

  button {
    display: grid;
    gap: 0 var(--space-2);
    align-items: center;
    width: 100%;
    min-height: 2.75rem;
    padding: var(--space-1) var(--space-2);
    border: var(--line) solid var(--rule);
    border-radius: var(--radius);
    background: none;
    text-align: left;
  }

  button:hover:not(:disabled) {
    border-color: var(--ink);
  }

  .at button {
    background: var(--wash);
  }

  .label {
    font-weight: 700;
  }

  .said {
    font-size: var(--text-small);
  }

  .ok {
    color: var(--ok);
  }

  button:disabled .signal,
  button:disabled .ok {
    color: inherit;
  }
`;
