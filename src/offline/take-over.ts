/**
 * What the page sends to a version that waits, once the person wants it. A type alone: a value that
 * page and service worker share would become a file that both import.
 */
export type TakeOver = 'take over';
