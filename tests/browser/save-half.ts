import { openStore } from '../../src/session/store';

/*
 * A worker that saves a long capture into the database whose name it is sent, and never gets past
 * its second piece: it says so and waits to be ended.
 */
self.onmessage = ({ data: name }: MessageEvent<string>): void => {
  const { put } = IDBObjectStore.prototype;
  let pieces = 0;
  IDBObjectStore.prototype.put = function (...values) {
    const request = put.apply(this, values);
    if (++pieces < 2) return request;
    self.postMessage('half');
    for (;;);
  };
  void openStore(name).saveCapture('take', new Float32Array(1_000_000).fill(0.5));
};
