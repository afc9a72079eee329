import { css } from 'lit';

/** Buttons: .go for the one next step of a view, .ghost for the others, .plain inside a sentence. */
export const buttonStyles = css`
  button {
    font: inherit;
    color: inherit;
    cursor: pointer;
  }

  .go,
  .ghost {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: var(--space-2);
    min-height: var(--target);
    padding: var(--space-1) var(--space-4);
    border: var(--line-strong) solid var(--ink);
    border-radius: var(--radius);
    background: none;
    font-weight: 700;
    text-decoration: none;
    color: var(--ink);
  }

  .go {
    background: var(--signal);
    border-color: var(--signal);
    color: var(--on-signal);
  }

  .ghost:hover:not(:disabled) {
    background: var(--track);
  }

  .go:hover:not(:disabled) {
    background: color-mix(in oklab, var(--signal), var(--ink) 15%);
  }

  .go:active:not(:disabled),
  .ghost:active:not(:disabled) {
    translate: 0 1px;
  }

  button:disabled {
    cursor: not-allowed;
    border-color: var(--rule);
    background: none;
    color: var(--soft);
  }

  .plain {
    padding: 0;
    border: 0;
    background: none;
    text-decoration: underline;
    text-underline-offset: 0.2em;
  }
`;
