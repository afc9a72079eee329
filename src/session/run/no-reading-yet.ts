import { trouble } from '../../trouble';

/** Why a noise reading cannot be kept before there is one. */
export const noReadingYet = trouble(
  'failed',
  'There is no reading to keep yet: let the noise run until two whole periods were heard.',
);
