import { localeInForce } from '../../../src/locale/locale-in-force';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { InspectAnswer, InspectRequest, Inspector } from '../../../src/inspect/inspection';
import { isTrouble } from '../../../src/trouble';

interface AskingHost extends ReactiveControllerHost {
  inspector: Inspector | null;
}

/** The answer to what a view asks now; asks once for each question and draws when it is there. */
export class Asked implements ReactiveController {
  private readonly host: AskingHost;
  private key = '';
  private answer: InspectAnswer | null = null;
  /** Why there is no answer; null while there is one or it is on its way. */
  refusal: string | null = null;

  constructor(host: AskingHost) {
    this.host = host;
    host.addController(this);
  }

  hostDisconnected(): void {
    this.key = '';
  }

  /** The answer to a request; the one before stays until it is there, null when its kind differs. */
  to<Request extends InspectRequest>(
    request: Request,
  ): Extract<InspectAnswer, { kind: Request['kind'] }> | null {
    const key = JSON.stringify([request, localeInForce()]);
    if (key !== this.key) {
      this.key = key;
      void this.ask(key, request);
    }
    const { answer } = this;
    return answer?.kind === request.kind
      ? (answer as Extract<InspectAnswer, { kind: Request['kind'] }>)
      : null;
  }

  /** Asks something beside what is shown, such as for a file. */
  async once<Request extends InspectRequest>(
    request: Request,
  ): Promise<Extract<InspectAnswer, { kind: Request['kind'] }> | null> {
    const answer = await this.host.inspector?.ask(request);
    if (!answer || isTrouble(answer)) {
      this.refusal = answer?.sentence ?? null;
      this.host.requestUpdate();
      return null;
    }
    return answer as Extract<InspectAnswer, { kind: Request['kind'] }>;
  }

  private async ask(key: string, request: InspectRequest): Promise<void> {
    const answer = await this.host.inspector?.ask(request);
    if (key !== this.key || !answer) return;
    this.refusal = isTrouble(answer) ? answer.sentence : null;
    this.answer = isTrouble(answer) ? null : answer;
    this.host.requestUpdate();
  }
}
