import { msg } from '@lit/localize';
import { trouble } from '../../trouble';

/** Why a noise reading cannot be kept before there is one. */
export const noReadingYet = () =>
  trouble(
    'failed',
    msg('There is no reading to keep yet: let the noise run until two whole periods were heard.'),
  );
