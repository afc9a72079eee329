/** A file of the built app that is kept for use without the network. */
export interface KeptFile {
  /** From the folder the app is served from, with forward slashes, none in front. */
  readonly path: string;
  /** Of its bytes: SHA-256 in base64, as W3C Subresource Integrity writes it after `sha256-`. */
  readonly sha256: string;
}

/** One build of the app, whole: what a service worker keeps and answers with. */
export interface KeptBuild {
  /** Eight hex digits that change with any byte of the build. */
  readonly build: string;
  readonly files: readonly KeptFile[];
}
