// IEC 61260-1:2014, 5.2 to 5.5: octave ratio G = 10^0.3, exact midpoints 1000·G^(x/b). The standard
// was not at hand; values as seen in an open acoustics library and computed from the formula.
import { describe, it } from 'vitest';
import { bandEdges, bandMidpoints } from '../../dsp/level/bands';
import { expectClose } from '../close';

describe('IEC 61260-1 bands', () => {
  it('have these octave midpoints', () => {
    expectClose(
      [...bandMidpoints(15, 16_000, 1)],
      [
        15.8489, 31.6228, 63.0957, 125.8925, 251.1886, 501.1872, 1000, 1995.2623, 3981.0717,
        7943.2823, 15848.9319,
      ],
      6e-5,
    );
  });

  it('have these third-octave midpoints', () => {
    expectClose(
      [...bandMidpoints(9.9, 20_000, 3)],
      [
        10, 12.5893, 15.8489, 19.9526, 25.1189, 31.6228, 39.8107, 50.1187, 63.0957, 79.4328, 100,
        125.8925, 158.4893, 199.5262, 251.1886, 316.2278, 398.1072, 501.1872, 630.9573, 794.3282,
        1000, 1258.9254, 1584.8932, 1995.2623, 2511.8864, 3162.2777, 3981.0717, 5011.8723,
        6309.5734, 7943.2823, 10000, 12589.2541, 15848.9319, 19952.6231,
      ],
      6e-5,
    );
  });

  it('have these edges round 1 kHz', () => {
    expectClose([...bandEdges(1000, 3)], [891.2509381337455, 1122.0184543019634], 1e-9);
  });
});
