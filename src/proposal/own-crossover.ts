import { msg, str } from '@lit/localize';
import { measuredFactor } from '../../dsp/bass/crossover-rules';
import { sayHz, sayLossDb, sayNumber } from './phrases';
import type { BrokenLimit, GroupProposal, OwnCrossover, PredictedLoss } from './proposal';
import type { CrossoverProposal } from './propose-crossover';
import { typedCrossover } from './propose-groups';
import { groundsOf, type Reason } from './reason';

const limits: Readonly<Record<BrokenLimit, string>> = {
  get 'roll-off'() {
    return msg(
      str`under the measured rule, ${sayNumber(measuredFactor, 2)} times the 85 % quantile of the −6 dB point`,
    );
  },
  get distortion() {
    return msg('lower than distortion allows');
  },
  get compression() {
    return msg('lower than the speaker plays without loss');
  },
  get 'sub reach'() {
    return msg('higher than the subs reach');
  },
};

/** What the tuner's own setting of a group costs; null while it is the proposed one. */
export function priceOwn(
  proposal: CrossoverProposal,
  inForceHz: number | null,
  sum: PredictedLoss | null,
  fullRange: GroupProposal['fullRange'],
): OwnCrossover | null {
  const proposedHz = typedCrossover(proposal);
  if (inForceHz === proposedHz) return null;
  const at = (hz: number | null) => proposal.alternatives.find(({ stepHz }) => stepHz === hz);
  const own = at(inForceHz);
  const proposed = at(proposedHz);
  const breaks = own?.breaks ?? [];
  const worse = own?.sum && proposed?.sum ? own.sum.lossDb - proposed.sum.lossDb : null;
  const price: Reason[] = [
    ...breaks.map((limit) => ({
      sentence: msg(str`${sayHz(inForceHz ?? 0)} is ${limits[limit]}.`),
      grounds:
        proposal.decidedBy && limit !== 'sub reach'
          ? groundsOf([proposal.decidedBy], limit === 'roll-off' ? 'rolloff' : 'distortion')
          : [],
    })),
    ...(worse === null || Math.abs(worse) < 0.05
      ? []
      : [
          {
            sentence: msg(
              str`By the table of steps the sum loses ${sayLossDb(worse)} ${worse > 0 ? msg('more') : msg('less')} than at ${sayHz(proposedHz ?? 0)}.`,
            ),
            grounds: groundsOf(proposal.channels, 'bass'),
          },
        ]),
    ...(own?.localised
      ? [{ sentence: msg('Above 120 Hz a sub begins to be heard where it stands.'), grounds: [] }]
      : []),
    ...(inForceHz === null ? fullRange.reasons : []),
  ];
  return { crossoverHz: inForceHz, breaks, sum, price };
}
