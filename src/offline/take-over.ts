/** What the page sends to a version that waits, once the person wants it. */
export const takeOver = 'take over';
