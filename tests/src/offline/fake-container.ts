/** A worker that holds still; what it is sent is kept. */
export class FakeWorker extends EventTarget {
  readonly sent: unknown[] = [];

  postMessage(message: unknown): void {
    this.sent.push(message);
  }
}

export class FakeRegistration extends EventTarget {
  installing: FakeWorker | null = null;
  waiting: FakeWorker | null = null;
  active: FakeWorker | null = null;

  /** A worker arrives, is found, and has all its files. */
  install(): FakeWorker {
    const worker = new FakeWorker();
    this.installing = worker;
    this.dispatchEvent(new Event('updatefound'));
    this.installing = null;
    this.waiting = worker;
    worker.dispatchEvent(new Event('statechange'));
    return worker;
  }

  /** The worker that waits takes the place of the one in use. */
  activate(): void {
    const worker = this.waiting;
    this.active = worker;
    this.waiting = null;
    worker?.dispatchEvent(new Event('statechange'));
  }
}

/** What a page sees of its service workers, moved by hand. */
export class FakeContainer extends EventTarget {
  readonly registration = new FakeRegistration();
  readonly asked: unknown[][] = [];
  controller: FakeWorker | null = null;
  refused = false;

  register(...words: unknown[]): Promise<FakeRegistration> {
    this.asked.push(words);
    return this.refused
      ? Promise.reject(new TypeError('not here'))
      : Promise.resolve(this.registration);
  }

  /** The active worker answers this page from now on. */
  control(): void {
    this.controller = this.registration.active;
    this.dispatchEvent(new Event('controllerchange'));
  }

  /** As the browser's own type, of which the code under test uses no more than is here. */
  get asContainer(): ServiceWorkerContainer {
    return this as unknown as ServiceWorkerContainer;
  }
}
