/** An event that keeps a service worker alive until its work is done. */
export interface LastingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}

export interface RequestEvent extends LastingEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** What is used of a service worker's scope (W3C Service Workers); the DOM library leaves it out. */
export interface ServiceScope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LastingEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: RequestEvent) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void;
}
