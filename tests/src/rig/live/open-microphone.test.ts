import { describe, expect, it } from 'vitest';
import { explainRefusal } from '../../../../src/rig/live/open-microphone';

describe('explainRefusal', () => {
  it.each([
    ['NotAllowedError', 'no-permission'],
    ['SecurityError', 'no-permission'],
    ['NotFoundError', 'no-microphone'],
    ['OverconstrainedError', 'no-microphone'],
    ['NotReadableError', 'no-microphone'],
    ['AbortError', 'no-microphone'],
    ['UnknownError', 'failed'],
  ])('explains %s as %s and says what to do', (name, kind) => {
    const reason = explainRefusal(new DOMException('why', name));
    expect(reason.trouble).toBe(kind);
    expect(reason.sentence).toMatch(/, then start again\.$/);
  });
});
