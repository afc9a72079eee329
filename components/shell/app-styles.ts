import { css } from 'lit';

export const appStyles = css`
  :host {
    display: block;
    min-height: 100dvh;
    background: var(--paper);
    color: var(--ink);
  }
`;
