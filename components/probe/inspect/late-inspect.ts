import { lateElement } from '../../late/late-element';

/** The sheet that looks into the sound of takes: charts of its own, loaded when it is first shown. */
export const lateInspect = lateElement('ll-inspect-sheet', () => import('./inspect-sheet'));
