import type { Late } from '../../src/late';
import { lateElement } from '../late/late-element';
import type { StageId } from './stages';

/** The stages, each loaded when it is first shown. */
export const lateStages: Readonly<Record<StageId, Late<object>>> = {
  plan: lateElement('ll-plan', () => import('../plan/plan-stage')),
  patch: lateElement('ll-patch', () => import('../patch/patch-stage')),
  probe: lateElement('ll-probe', () => import('../probe/probe-stage')),
  propose: lateElement('ll-propose', () => import('../propose/propose-stage')),
  prove: lateElement('ll-prove', () => import('../prove/prove-stage')),
};
