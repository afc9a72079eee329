import { css } from 'lit';

/** Lines of the curve chart and the names above them. */
export const curveStyles = css`
  .names {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-4);
    min-height: 1.6em;
    font-size: var(--text-small);
  }

  .names span {
    display: inline-flex;
    gap: var(--space-1);
    align-items: center;
    white-space: nowrap;
  }

  .names svg {
    width: 1.6rem;
    height: 0.6rem;
  }

  .trace {
    fill: none;
    stroke-width: 1.8;
    stroke-linejoin: round;
  }

  .trace.thin {
    stroke-width: 1;
    opacity: 0.6;
  }

  .trace.strong {
    stroke-width: 2.6;
  }

  .dashed {
    stroke-dasharray: 7 4;
  }

  .dotted {
    stroke-dasharray: 1.5 4;
    stroke-linecap: round;
  }
`;
