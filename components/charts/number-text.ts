export * from '../../src/locale/number-text';
export { lengthText as metresText } from '../../src/locale/length-text';
