import '../locale/hear-locale';
import { unpack } from '../packed';
import type { Readings } from '../reading/reading';
import { judgeProof } from './judge-proof';
import type { Proof } from './proof';
import type { PackedProofInput } from './judge-in-worker';

function answerTo({ before, after, ...others }: PackedProofInput): Proof {
  return judgeProof({
    ...others,
    before: before && unpack<Readings>(before),
    after: unpack<Readings>(after),
  });
}

self.onmessage = ({ data }: MessageEvent<PackedProofInput>): void =>
  self.postMessage(answerTo(data));
