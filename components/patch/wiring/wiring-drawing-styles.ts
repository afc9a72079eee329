import { css } from 'lit';

export const wiringDrawingStyles = css`
  :host {
    display: block;
  }

  ol {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(5.75rem, 1fr));
    gap: var(--space-4) 0;
    margin: 0;
    padding: 0;
    list-style: none;
  }

  li {
    display: grid;
    align-content: start;
    justify-items: stretch;
    min-width: 0;
  }

  /* Cells touch, so that their tops are one long panel. */
  .panel {
    display: grid;
    grid-template-rows: minmax(2.6em, auto) auto;
    gap: var(--space-1);
    align-items: end;
    justify-items: center;
    padding: var(--space-2) var(--space-1) 0;
    border-top: var(--line-strong) solid var(--ink);
    border-bottom: var(--line-strong) solid var(--ink);
    background: var(--track);
    font-size: var(--text-small);
    line-height: 1.25;
    text-align: center;
  }

  .name {
    max-width: 100%;
    overflow-wrap: anywhere;
  }

  svg {
    display: block;
    width: 2.5rem;
    height: 2.125rem;
  }

  .socket {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 1.5;
  }

  .hole {
    fill: var(--ink);
  }

  .plug {
    fill: currentColor;
    stroke: var(--sheet);
  }

  .cable {
    justify-self: center;
    width: 4px;
    height: 1.75rem;
  }

  .wired .cable {
    background: currentColor;
  }

  .conflict .panel {
    border-color: var(--signal);
    background: var(--wash);
  }

  .conflict .socket {
    stroke: var(--signal);
    stroke-width: 3;
  }

  .end {
    display: grid;
    justify-items: center;
    align-content: start;
    gap: 0.1rem;
    min-height: var(--target);
    padding: 0 var(--space-1) var(--space-1);
    border: 0;
    border-radius: var(--radius);
    background: none;
    font-size: var(--text-small);
    line-height: 1.25;
    text-align: center;
  }

  button.end:hover {
    background: var(--track);
  }

  button.end[aria-pressed='true'] {
    background: var(--wash);
  }

  .label {
    font-size: var(--text);
    font-weight: 700;
  }

  .stop {
    color: var(--signal);
    font-weight: 700;
  }
`;
