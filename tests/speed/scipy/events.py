"""Events among the tiles that hold more than a take's noise, and how far each moves the response."""
import numpy as np

from responses import octave_rate

EDGE = 2 ** (1 / 6)


def spans_of(seen, hidden, weights, most_quiet):
    """First and end frame of each stretch of activity; gaps count as far as their bands are free."""
    activity = weights @ seen
    runs = np.flatnonzero(np.diff(np.pad(activity >= 1e-3 * activity.max(), 1).astype(np.int8)))
    out = []
    for first, end in runs.reshape(-1, 2) if activity.max() > 0 else ():
        if out:
            profile = weights * seen[:, out[-1][0]:out[-1][1]].sum(1)
            quiet = np.sum(profile @ ~hidden[:, out[-1][1]:first]) / profile.sum()
            if quiet < most_quiet:
                out[-1][1] = end
                continue
        out.append([first, end])
    return out


def bridged(spectrum, sure, floors, mids):
    """Bands that are hidden all along: between their neighbours, falling no faster than so."""
    width, known = mids * (EDGE - 1 / EDGE), np.flatnonzero(sure)
    if not len(known):
        return spectrum
    dense = np.maximum(spectrum, floors) / width
    below = known[np.maximum(np.searchsorted(known, np.arange(len(mids))) - 1, 0)]
    above = known[np.minimum(np.searchsorted(known, np.arange(len(mids))), len(known) - 1)]
    between = np.exp(np.interp(np.arange(len(mids)), known, np.log(dense[known])))
    has_below, has_above = np.arange(len(mids)) > known[0], np.arange(len(mids)) < known[-1]
    from_low = np.where(has_below, dense[below] * (mids[below] / mids) ** 2, 0)
    from_high = np.where(has_above, dense[above] * mids / mids[above], 0)
    density = np.where(has_below & has_above, between, 0)
    density = np.maximum(density, np.maximum(from_low, np.where(has_below, from_high, dense[above])))
    return np.where(sure, spectrum, np.maximum(spectrum, density * width))


def shape_of(seen, hidden, weights, floors, mids, rounds=6):
    """Best product of course and spectrum for what is seen, hidden tiles left out."""
    free = ~hidden
    shown, free_of = np.where(free, seen, 0), free.astype(float)
    course = np.ones(seen.shape[1])
    for turn in range(rounds):
        weight = free_of @ course
        spectrum = shown.sum(1) / np.where(weight > 0, weight, 1)
        visible = weight / max(course.sum(), 1e-300)
        if turn == rounds - 1:
            break
        sure = np.where(visible < 0.12, 0, weights)
        share = (sure * spectrum) @ free_of
        known = np.flatnonzero(share > 0.02 * np.dot(sure, spectrum))
        if len(known):
            course = np.interp(np.arange(len(course)), known, (sure @ shown)[known] / share[known])
    return course, bridged(spectrum, visible >= 0.12, floors, mids)


def error_db(ratio, width):
    both = 1 + ratio + 2.1 * np.sqrt(ratio / (1 + 0.15 * width))
    return 10 * np.log10(np.minimum(both, (1 + np.sqrt(ratio)) ** 2))


def follows_sweep(seen, hidden, weights, spectrum, first, sweep, sweep_at, rate, hop, mids):
    """Whether an event climbs with the sweep, all above or all below it."""
    slow, pitch = octave_rate(sweep), np.log(mids)
    time = ((first + np.arange(seen.shape[1])) * hop - sweep_at) / rate
    value, usual = weights[:, None] * seen, (weights * spectrum)[:, None] * ~hidden
    weight, expected = value.sum(0), usual.sum(0)
    above = np.sum(value[time[None, :] < slow * np.log(mids / sweep["startHz"])[:, None]])
    good = (weight > 0) & (expected > 0)
    if good.sum() * hop / rate < 0.4:
        return False
    mean = (pitch @ value)[good] / weight[good] - (pitch @ usual)[good] / expected[good]
    climbs = np.polyfit(time[good], mean, 1)[0] * slow > 0.4
    share = above / weight.sum()
    return climbs and (good.sum() > 0.85 * len(good) if share > 0.9 else share < 0.1)


def read_events(seen, hidden, seconds, hop, energy, gain, floors, sweep, rate, sweep_at, pre, ir,
                played, mids):
    """How far each event may move the response, decibels."""
    low, high = mids / EDGE, mids * EDGE
    swept = (low >= 1.2 * sweep["startHz"]) & (high <= 0.93 * sweep["endHz"])
    weights = np.where(swept & (energy > 0), gain / np.maximum(energy, 1e-30),
                       1e-3 / (floors * seen.shape[1] * hop))
    starts = sweep_at - pre + octave_rate(sweep) * np.log(mids / sweep["startHz"]) * rate
    from_, to = np.round(starts / hop), np.round((starts + len(ir)) / hop)
    noise = floors * gain * len(ir)
    counts = swept & (energy > 0) & (high >= played[0]) & (low <= played[1])
    cells = hop / rate / np.maximum(0.05, 1.5 * seconds)
    out = []
    for first, end in spans_of(seen, hidden, weights, 0.4 * rate / hop):
        part, under = seen[:, first:end], hidden[:, first:end]
        course, spectrum = shape_of(part, under, weights, floors, mids)
        n = np.arange(first, end)
        inside = (n >= from_[:, None]) & (n < to[:, None])
        held = np.where(under, course[None, :] * spectrum[:, None], part)
        left = np.sum(held * inside, axis=1) * hop * gain
        error = error_db(left / np.maximum(np.maximum(energy - left, 0.05 * energy), 1e-30),
                         high - low)
        own = error_db(noise / np.maximum(energy, 1e-30), high - low)
        moved = np.where(counts & (left >= 1.5 * noise) & (error >= 2.5 * own), error, 0)
        evidence = np.sum(cells[:, None] * (part > 0))
        sound = evidence >= 4 and not follows_sweep(part, under, weights, spectrum, first, sweep,
                                                    sweep_at, rate, hop, mids)
        out.append(float(moved.max()) if sound else 0.0)
    return out
