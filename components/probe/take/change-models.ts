import type { Bench } from '../../../src/session/bench';
import type { SpeakerModels } from '../../../src/system/speaker-models';

/** Changes what is declared of the speakers' models, under a name that undo can show. */
export function changeModels(
  bench: Bench | null,
  name: string,
  change: (models: SpeakerModels) => SpeakerModels,
): void {
  bench?.change(name, (document) => ({ ...document, models: change(document.models) }));
}
