import { css } from 'lit';

/** The list to type: figures that are read from two metres, rows that a glove hits. */
export const listStyles = css`
  .progress {
    height: 0.5rem;
    background: var(--track);
  }

  .progress span {
    display: block;
    height: 100%;
    background: var(--ok);
  }

  .bar {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-4);
    align-items: center;
    justify-content: space-between;
  }

  .parts {
    display: grid;
    gap: var(--space-5);
    grid-template-columns: minmax(0, 1fr);
    align-items: start;
  }

  @container (min-width: 56rem) {
    .parts {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
  }

  .parts ol {
    padding: 0;
    list-style: none;
  }

  .parts label {
    display: grid;
    grid-template-columns: 2rem minmax(0, 1fr) auto;
    gap: 0 var(--space-3);
    align-items: center;
    min-height: 3.75rem;
    padding-block: var(--space-1);
    border-bottom: var(--line) solid var(--rule);
    cursor: pointer;
  }

  .parts label:has(:disabled) {
    cursor: default;
  }

  .parts label.next {
    background: var(--wash);
    box-shadow: inset 4px 0 0 var(--signal);
    /* Its ground reaches out, so that what it says stands in line with the other rows. */
    margin-inline: calc(-1 * var(--space-2));
    padding-inline: var(--space-2);
  }

  .parts input {
    width: 1.9rem;
    height: 1.9rem;
    margin: 0;
    accent-color: var(--ok);
  }

  .name {
    font-size: 1.3rem;
    line-height: 1.15;
  }

  .name small {
    display: block;
    font-size: var(--text-small);
    color: var(--soft);
  }

  .value {
    font-family: var(--mono);
    font-size: clamp(1.7rem, 9cqi, 2.75rem);
    font-weight: 700;
    line-height: 1.1;
    text-align: right;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }

  .value.unknown {
    font-family: var(--face);
    font-size: 1.1rem;
    font-weight: 400;
    color: var(--soft);
  }

  .value small {
    display: block;
    font-family: var(--face);
    font-size: var(--text-small);
    font-weight: 700;
    color: var(--signal);
  }

  .ticked .name,
  .ticked .value {
    color: var(--soft);
    font-weight: 400;
  }
`;
