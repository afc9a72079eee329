// dwChannelMask of WAVE_FORMAT_EXTENSIBLE, as its vendor documents it: FL 1, FR 2, FC 4, LFE 8,
// BL 10h, BR 20h, SL 200h, SR 400h, TFL 1000h, TFR 4000h, TBL 8000h, TBR 20000h; 5.1 with sides
// 60Fh, 7.1 with sides and backs 63Fh.
import { expect, it } from 'vitest';
import { channelMask } from '../../src/system/channel-mask';
import { layoutFromName } from '../../src/system/layout';
import { isTrouble } from '../../src/trouble';

it.each([
  ['2.0', 0x3],
  ['3.1', 0xf],
  ['5.1', 0x60f],
  ['7.1', 0x63f],
  ['5.1.2', 0x60f + 0x1000 + 0x4000],
  ['7.1.4', 0x63f + 0x1000 + 0x4000 + 0x8000 + 0x20000],
  // Wides, middle heights and further subs have no bit.
  ['9.4.6', 0x63f + 0x1000 + 0x4000 + 0x8000 + 0x20000],
])('the mask of %s is %d', (name, mask) => {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  expect(channelMask(layout)).toBe(mask);
});
