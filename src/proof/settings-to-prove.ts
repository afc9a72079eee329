import type { Proposal } from '../proposal/proposal';
import type { FiltersInForce } from '../system/declared-settings';
import type { ProcessorSettings } from '../system/processor-settings';

/**
 * What a proposal says to type, the tuner's own choices included. Mains that read inverted are taken
 * to have had their wires swapped.
 */
export function settingsToProve(proposal: Proposal, filters: FiltersInForce): ProcessorSettings {
  const { channels, settings, lfe, equaliser } = proposal;
  const { distanceMetres, trimDb, crossoverHz, subLowPassHz, lowCutHz } = settings;
  const swapped = channels.flatMap(({ channel, polarity }) =>
    polarity === 'inverted' ? [channel] : [],
  );
  return {
    distanceMetres,
    trimDb,
    crossoverHz,
    subLowPassHz,
    lowCutHz,
    inverted: [...swapped, ...settings.inverted],
    lfe: { lowPassHz: lfe.lowPassHz, gainDb: lfe.replayGainDb },
    filters,
    equalised: equaliser !== null,
  };
}
