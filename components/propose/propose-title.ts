import { msg, str } from '@lit/localize';
import { sayList } from '../../src/proposal/phrases';
import type { BenchState } from '../../src/session/bench';
import { ordersTogether } from '../../src/session/orders-together';
import { unreadTogether } from '../../src/session/still-together';
import { dbText } from '../../src/locale/number-text';
import type { TitleAndLede } from '../probe/probe-title';
import { ledgerFinding } from './bass/ledger-words';
import { isNothingChosen } from './choices/change-choices';
import { groupFinding } from './group-words';
import { listOf, listTitle } from './list/list-words';
import type { ProposeSheetId } from './propose-sheets';
import type { ProposeView } from './propose-view';
import { subsTitle } from './subs/subs-words';

/** The finding of a sheet, as its title, and what goes with it. */
export function proposeTitle(
  view: ProposeView,
  state: BenchState,
  sheet: ProposeSheetId,
): TitleAndLede {
  switch (sheet) {
    case 'crossovers':
      return groupTitle(view);
    case 'subs':
      return subsTitle(view);
    case 'bass':
      return bassTitle(view);
    case 'compare':
      return compareTitle(view);
    case 'equaliser':
      return equaliserTitle(view);
    case 'list':
      return listTitle(listOf(view, state.document), view.layout);
  }
}

function groupTitle({ group, settings, layout }: ProposeView): TitleAndLede {
  const { channels, decidedBy, decidedByReading, crossoverHz } = group;
  const title = groupFinding(group, settings.crossoverHz[group.group] ?? null, layout);
  if (!layout.channels.some(({ kind }) => kind === 'sub')) {
    return {
      title,
      lede:
        crossoverHz === null
          ? msg('Without a sub nothing takes over below the roll-off.')
          : msg('Without a sub the fronts take over its bass.'),
    };
  }
  if (decidedBy === null) {
    return { title, lede: msg('This take gave no roll-off; the notes under Probe say why.') };
  }
  const { readFrom } = group;
  if (readFrom && channels.length > 1 && channels.every((one) => readFrom.channels.includes(one))) {
    const lede = msg(
      str`${sayList(channels)} share one setting and are one model, read from ${readFrom.heard}.`,
    );
    return { title, lede };
  }
  const by = decidedByReading === 'roll-off' ? msg('reaches less deep') : msg('is driven harder');
  const lede =
    channels.length > 1
      ? msg(str`${sayList(channels)} share one setting; ${decidedBy} ${by}, so it decides.`)
      : msg(str`${decidedBy} stands alone, so it decides.`);
  return { title, lede };
}

function bassTitle({ proposal }: ProposeView): TitleAndLede {
  const { own, proposed } = proposal.ledger;
  const shown = own ?? proposed;
  const most = Math.max(0, ...shown.lines.map(({ lossDb }) => lossDb));
  return {
    title: ledgerFinding(shown),
    lede:
      shown.lines.length === 0
        ? msg('A roll-off of the subs is missing.')
        : msg(
            str`20 to 300 Hz, by channel of the programme; at most ${dbText(most)} is missing on one.`,
          ),
  };
}

function compareTitle({ choices }: ProposeView): TitleAndLede {
  return isNothingChosen(choices)
    ? {
        title: msg('You keep to the proposal'),
        lede: msg(
          'Drag a handle under Crossovers, or choose another step, to have two sets to compare.',
        ),
      }
    : {
        title: msg('Your settings beside the proposed ones'),
        lede: msg('What differs is marked.'),
      };
}

function equaliserTitle({ proposal, choices }: ProposeView): TitleAndLede {
  if (choices.equaliserBands === 0) {
    return {
      title: msg('No equaliser is advised'),
      lede: msg('It is last in order, and off until wanted.'),
    };
  }
  const count = proposal.equaliser?.channels.filter(({ bands }) => bands.length > 0).length ?? 0;
  return {
    title:
      count === 0
        ? msg('An equaliser would help no channel')
        : msg(
            str`An equaliser would help ${count} ${count === 1 ? msg('channel') : msg('channels')}`,
          ),
    lede: msg('Type it last, after distances, levels and crossovers are proved.'),
  };
}

/** What is missing before anything can be proposed. */
export function missingTitle(state: BenchState): TitleAndLede {
  const { readings, layout, activity } = state;
  if (activity.kind !== 'idle') {
    return { title: msg('A take is running'), lede: msg('The settings appear once it is read.') };
  }
  if (!readings) {
    return {
      title: msg('No settings yet'),
      lede: msg(
        'They come from measured arrivals, levels and roll-offs. A take under Probe gives all of them.',
      ),
    };
  }
  if (readings.layout !== layout.name) {
    return {
      title: msg(str`The last take was of ${readings.layout}`),
      lede: msg(str`The plan now says ${layout.title}. Run a new take under Probe.`),
    };
  }
  if (unreadTogether(ordersTogether(state.document, layout), state.together).length > 0) {
    return {
      title: msg('Roll-offs are being read together'),
      lede: msg('The settings appear in a moment, from all seats and speakers of one model.'),
    };
  }
  return {
    title: msg('The settings cannot be worked out'),
    lede: msg(
      'The processor’s steps or the readings do not fit together. Run the take again under Probe.',
    ),
  };
}
